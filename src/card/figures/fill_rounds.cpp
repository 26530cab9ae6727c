// SPDX-License-Identifier: MIT
#include "card/figures/fill_rounds.hpp"

#include <cmath>

namespace holdwater::card {

units::Volume pot_gives(const plan::Plan& plan) {
    return plan.trip->fire.pot * plan.trip->fire.usable;
}

int full_pots(const plan::Plan& plan) {
    int pots = 0;
    for (const plan::Pour& pour : plan.fill.pours) {
        pots += pour.whole;
    }
    return pots;
}

units::Volume to_trim(const plan::Plan& plan) {
    return plan.fill.boiled_most - pot_gives(plan) * full_pots(plan);
}

bool worth_a_pour(units::Volume litres) {
    return units::in_litres(litres) >= 0.25;
}

units::Mass weight_of_fill(const plan::Plan& plan) {
    return units::Mass{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
}

}  // namespace holdwater::card
