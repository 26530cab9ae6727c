// SPDX-License-Identifier: MIT
// The answer of `hold` in words: verdict, warnings and what a cook reads on the terminal.
#pragma once

#include "answer/hold/hold_verdict.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

/// One or two plain sentences: may it be eaten, and after how long; if not, why, and the nearest plan that is allowed.
std::string hold_verdict(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer);

/// What the reader should check or know: physics only, slow come-up, readings to keep, consumer advice.
problem::Problems hold_warnings(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer);

std::string hold_text(const answer::OnePieceQuestion& question, const answer::OnePieceAnswer& answer,
                      const problem::Problems& warnings);

}  // namespace holdwater::cli
