// SPDX-License-Identifier: MIT
// Boiling water besides the bath's, for drinks and washing-up: when its pots go on, and whether they are free.
#pragma once

#include "problem/problem.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <string>
#include <vector>

namespace holdwater::plan {

struct Plan;

struct HotWaterStart {
    std::string name;
    units::Volume volume;         // as measured boiling, for all
    int pots = 1;                 // on the fire at once
    int rounds = 1;               // potfuls one after the other
    units::LocalTime light_fire;  // under the first pots
    units::LocalTime at;          // the last of it boils
};

struct HotWaters {
    std::vector<HotWaterStart> list;  // by the clock
    units::Volume all;                // together
    problem::Problems notes;          // warnings: hot-water-clash
};

/// The plan must have its fill, top-ups, foods with their finishing, and side dishes are looked at by the trip. The
/// bath goes first: where pots are short it is the other water that has to wait, and the warning says so.
HotWaters hot_waters_of(const Plan& plan);

}  // namespace holdwater::plan
