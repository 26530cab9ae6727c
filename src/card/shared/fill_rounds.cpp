// SPDX-License-Identifier: MIT
#include "card/shared/fill_rounds.hpp"

#include "card/shared/figures.hpp"

#include <cmath>

namespace holdwater::card {

units::Volume pot_gives(const plan::Plan& plan) {
    return plan.trip->fire.pot * plan.trip->fire.usable;
}

std::vector<FillRound> fill_rounds(const plan::Plan& plan) {
    std::vector<FillRound> rounds;
    for (const plan::Pour& pour : plan.fill.pours) {
        FillRound round{pour.boiling, pour.pots, false};
        // The last is poured to the reading even where it happens to take whole pots.
        const bool last = rounds.size() + 1 == plan.fill.pours.size();
        round.full = !last && !worth_a_pour(pot_gives(plan) * pour.pots - pour.boiling);
        rounds.push_back(round);
    }
    return rounds;
}

int full_pots(const plan::Plan& plan) {
    int pots = 0;
    for (const FillRound& round : fill_rounds(plan)) {
        pots += round.full ? round.pots : 0;
    }
    return pots;
}

units::Mass weight_of_fill(const plan::Plan& plan) {
    return units::Mass{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
}

}  // namespace holdwater::card
