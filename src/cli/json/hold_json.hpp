// SPDX-License-Identifier: MIT
// The answer of `hold` as JSON.
#pragma once

#include "answer/hold/hold_verdict.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

std::string hold_json(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer,
                      const problem::Problems& warnings);

}  // namespace holdwater::cli
