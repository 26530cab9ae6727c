// SPDX-License-Identifier: MIT
// When a plan does not hold: what would mend it, each advice tried before it is given.
#pragma once

#include "plan/result/effort.hpp"

#include <string>
#include <vector>

namespace holdwater::plan {

struct Remedy {
    std::string advice;
    trip::Trip changed;  // holds by the same scenarios as any plan
};

/// What would make a trip hold, the cheapest for the cook first: the smallest single change of each sort, or where no
/// single one is enough, two together.
std::vector<Remedy> remedies_of(const trip::Trip& trip);

/// The problems with, as notes behind them, what remedies_of found.
problem::Problems with_advice(const trip::Trip& trip, problem::Problems problems);

}  // namespace holdwater::plan
