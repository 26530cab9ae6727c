// SPDX-License-Identifier: MIT
#include "card/figures/pan_fire.hpp"

#include "card/figures/kitchen_measures.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::card {

int pots_of(const plan::TopUp& top_up, const trip::Fire& fire) {
    return std::clamp(static_cast<int>(std::ceil(top_up.boiling_most / (fire.pot * fire.usable) - 1e-9)), 1, fire.pots);
}

std::optional<PanFire> pan_fire(const plan::Plan& plan, const plan::Sear& sear, units::LocalTime meal) {
    if (sear.foods.empty() || sear.foods.front().elsewhere) {
        return std::nullopt;
    }
    units::LocalTime out = first_piece_out(plan, sear, meal);
    for (const plan::Event& event : plan.events) {
        if (event.kind == plan::Event::Kind::sitting && meal == plan.trip->serve) {
            out = std::min(out, event.at);
        }
    }
    PanFire fire{out.after(-plan.round)};
    for (const plan::TopUp& top_up : plan.top_ups) {
        const bool full = pots_of(top_up, plan.trip->fire) == plan.trip->fire.pots;
        if (!full || top_up.light_fire >= out || top_up.at <= fire.at) {
            continue;
        }
        // The pots have every place until they are poured.
        if (top_up.at < out) {
            fire.at = top_up.at;
        } else {
            fire.apart = true;
        }
    }
    return fire;
}

}  // namespace holdwater::card
