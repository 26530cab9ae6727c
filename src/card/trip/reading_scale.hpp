// SPDX-License-Identifier: MIT
// The two parts of the thermometer on Reading: what to pour while the bath is good, what to do when it was not.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// From the fill down to the floor: leave it, or top up, with the litres.
Thermometer::Section good_readings(const CardWriter& writer, const CardFigures& on);

/// So many rungs of the ladder, evenly, with the first and the last, by number from 1: between two lines the colder one
/// counts.
std::vector<int> few_rungs(const plan::Plan& plan, int most);

/// Below the floor, by the time since the bath last read well: the one decision, for watched and unwatched. One row for
/// all readings that ask for the same, named by the lowest of them; the last stands for all below.
Thermometer::Section fallen_readings(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
