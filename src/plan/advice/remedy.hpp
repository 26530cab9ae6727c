// SPDX-License-Identifier: MIT
// When a plan does not hold: what would mend it, planned in full before it is said; or that nothing does, and why.
#pragma once

#include "plan/advice/feasible.hpp"

namespace holdwater::plan {

/// The problems with, as notes behind them, the changes that make the trip hold (mend), or the limit that none of them
/// gets over, all pulled to the end of their range together (no-mend). Wrong input that no change mends gets neither.
/// What `feasible` knows of changed trips already is not tried again.
problem::Problems with_advice(const trip::Trip& trip, problem::Problems problems, Feasible& feasible);

}  // namespace holdwater::plan
