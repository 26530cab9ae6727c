// SPDX-License-Identifier: MIT
// The temperatures that a trip's bath goes by, each worked out once and printed elsewhere.
#pragma once

#include "units/quantity.hpp"

namespace holdwater::plan {

/// The strictest over all foods, from the hottest down.
struct Levels {
    units::Temperature boiling;      // water at the altitude of the trip
    units::Temperature mark;         // read this after a top-up; known once there is a schedule
    units::Temperature action_line;  // a reading here asks for a top-up now; never below read_floor
    units::Temperature read_floor;   // the floor as a reading, the thermometer's error on it: what cards print
    units::Temperature floor;        // the bath never below this, while the food cooks and after: nobody in the woods
                                     // changes cards at "done"
};

/// In how many of the scenarios all that the cards promise holds together.
struct Promise {
    double share = 0.0;  // 0 to 1
    double error = 0.0;  // of that share, from drawing scenarios at all
    std::size_t scenarios = 0;
};

}  // namespace holdwater::plan
