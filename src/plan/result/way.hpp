// SPDX-License-Identifier: MIT
// One of several ways to cook the same trip, to choose from.
#pragma once

#include "plan/search/burden.hpp"
#include "units/local_time.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace holdwater::plan {

struct Way {
    enum class Kind {
        planned,     // the plan itself
        unwoken,     // nobody gets up in the sleep window for it
        at_once,     // the fire is lit at the trip's first moment
        halved,      // every piece split in two
        better_box,  // one that loses less, or this one wrapped: fewer top-ups, or none
    };
    Kind kind = Kind::planned;
    std::vector<std::string> lines;  // of the trip file, that choose it: "[trip] light_fire = 2027-10-16T06:30:00"
    units::LocalTime light_fire;
    units::LocalTime ready;  // the last food, surely
    Burden burden;
    std::size_t top_ups = 0;
    double share = 0.0;  // of the scenarios in which it holds
};

}  // namespace holdwater::plan
