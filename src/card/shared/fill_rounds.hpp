// SPDX-License-Identifier: MIT
// The pours of the fill as every card and the terminal tell them.
#pragma once

#include "plan/result/plan.hpp"

#include <vector>

namespace holdwater::card {

/// All pots of the fire, once.
struct FillRound {
    units::Volume boiling;
    int pots = 0;
    bool full = false;  // whole pots: nothing to trim; else poured to the reading, or as measured
};

/// One for each pour of the plan, in its order.
std::vector<FillRound> fill_rounds(const plan::Plan& plan);

/// The pots of all full rounds together, and what one of them gives.
int full_pots(const plan::Plan& plan);
units::Volume pot_gives(const plan::Plan& plan);

/// Of the filled box, up to 5 kg, as its caution has it.
units::Mass weight_of_fill(const plan::Plan& plan);

}  // namespace holdwater::card
