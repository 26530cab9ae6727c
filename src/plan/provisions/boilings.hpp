// SPDX-License-Identifier: MIT
// When water for the bath is on the fire, and in how many pots.
#pragma once

#include "units/local_time.hpp"

#include <vector>

namespace holdwater::plan {

struct Plan;

struct Boiling {
    units::LocalTime from;
    units::LocalTime until;
    int pots = 0;
};

/// The pours of the fill, then the top-ups, each by its clock.
std::vector<Boiling> boilings_of(const Plan& plan);

}  // namespace holdwater::plan
