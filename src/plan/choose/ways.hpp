// SPDX-License-Identifier: MIT
// Other ways to cook the same trip, beside the one that was chosen.
#pragma once

#include "plan/choose/start.hpp"

#include <vector>

namespace holdwater::plan {

/// The plan as a way, and at the most two more that differ from it and from each other in what a cook would ask about:
/// when the fire is lit, who is woken, how often water is boiled and how much. Each holds in one set of the scenarios
/// that the plan promises by. `trip`: as it was written, `plan`: what was chosen for it.
std::vector<Way> ways_of(const trip::Trip& trip, const Plan& plan, const Effort& effort);

}  // namespace holdwater::plan
