// SPDX-License-Identifier: MIT
// The pours of the fill as every card and the terminal tell them.
#pragma once

#include "card/figures/rounding.hpp"
#include "plan/result/plan.hpp"

#include <vector>

namespace holdwater::card {

/// What one pot gives.
units::Volume pot_gives(const plan::Plan& plan);
/// The sums of the fill as they are printed, made once so that they add up: all that is boiled for it; what each round
/// pours, the last of them what the others leave of that.
struct FillSums {
    units::Amount all;
    units::Amount with_warming;  // and what warms the box before
    std::vector<units::Amount> rounds;
    const char* rounding = "up-tenth-litre";  // how `all` and `with_warming` were rounded, as a figure says it
};
FillSums fill_sums(const SafeSide& safe);

/// False for what would print as no litres at all.
bool worth_a_pour(units::Volume litres);

/// Of the filled box, up to 5 kg, as its caution has it.
units::Mass weight_of_fill(const plan::Plan& plan);

}  // namespace holdwater::card
