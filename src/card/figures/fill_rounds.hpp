// SPDX-License-Identifier: MIT
// The pours of the fill as every card and the terminal tell them.
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::card {

/// The pots that are poured in full, of all rounds together, and what one of them gives.
int full_pots(const plan::Plan& plan);
units::Volume pot_gives(const plan::Plan& plan);
/// What is poured besides, until the reading is right: no more than this in 95 of 100 scenarios.
units::Volume to_trim(const plan::Plan& plan);

/// False for what would print as no litres at all.
bool worth_a_pour(units::Volume litres);

/// Of the filled box, up to 5 kg, as its caution has it.
units::Mass weight_of_fill(const plan::Plan& plan);

}  // namespace holdwater::card
