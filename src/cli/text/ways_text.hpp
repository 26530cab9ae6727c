// SPDX-License-Identifier: MIT
// The ways to cook a trip, side by side.
#pragma once

#include "plan/result/plan.hpp"

#include <string>

namespace holdwater::cli {

/// A line or two for each way and what chooses it; empty where there is one way only and nothing was left open.
std::string ways_text(const plan::Plan& plan);

}  // namespace holdwater::cli
