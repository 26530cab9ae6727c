// SPDX-License-Identifier: MIT
// When a plan does not hold: what would mend it, each advice tried before it is given.
#pragma once

#include "plan/ensemble.hpp"

namespace holdwater::plan {

/// How hard to think: scenarios while searching, scenarios for the promise, and whether to look for advice.
struct Effort {
    Draw search{256, 1};
    Draw promise = full_draw();
    bool advise = true;
    bool what_ifs = true;  // answer those of the trip
};

problem::Result<Plan> make_plan(const trip::Trip& trip, const Effort& effort);

/// The problems with, as notes behind them, the changes of the trip that make it hold.
problem::Problems with_advice(const trip::Trip& trip, problem::Problems problems);

}  // namespace holdwater::plan
