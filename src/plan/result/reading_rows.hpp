// SPDX-License-Identifier: MIT
// The rows by which a card tells how to top up: a few rungs of the ladder, and what is boiled for them.
#pragma once

#include "plan/search/ladder.hpp"
#include "units/quantity.hpp"

#include <vector>

namespace holdwater::plan {

struct Plan;

/// What all pots give at one boil.
units::Volume pots_give(const Plan& plan);

/// The rungs of the ladder that are printed, a few, evenly, with the last, by number from 1: between two lines the
/// colder one counts, and so the first stands for all above it.
std::vector<int> printed_rungs(const Plan& plan);
/// How often the pots must boil for the most that a printed rung asks for.
int most_boils(const Plan& plan);
/// The printed one that a reading is looked up in.
const LadderRung& row_for(const Plan& plan, units::Temperature reading);
/// What is put on for a bath that is to be read so: its row, as far as one boil gives it.
units::Volume to_put_on(const Plan& plan, units::Temperature reading);

}  // namespace holdwater::plan
