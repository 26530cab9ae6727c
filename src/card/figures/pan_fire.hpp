// SPDX-License-Identifier: MIT
// When and where the fire for the pan is lit.
#pragma once

#include "plan/result/plan.hpp"

#include <optional>

namespace holdwater::card {

/// How many pots a top-up takes in 95 of 100 scenarios, at most all.
int pots_of(const plan::TopUp& top_up, const trip::Fire& fire);

/// When the fire is lit for the pan of a meal, so that it is very hot for the first piece of the first sitting: a pan
/// takes no longer to heat than a pot to boil. `apart`: on a second fire, since the pots have every place of the other.
/// Nothing where no food of this box is seared for it, or another box has the pan on by then.
struct PanFire {
    units::LocalTime at;
    bool apart = false;
};
std::optional<PanFire> pan_fire(const plan::Plan& plan, const plan::Sear& sear, units::LocalTime meal);

}  // namespace holdwater::card
