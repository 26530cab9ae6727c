// SPDX-License-Identifier: MIT
#include "card/figures/mixing.hpp"

#include "answer/water/mix.hpp"

namespace holdwater::card {

std::optional<Mixing> mixing_of(const plan::Plan& plan) {
    const plan::Fill& fill = plan.fill;
    if (!(fill.cold.si() > 0.0)) {
        return std::nullopt;
    }
    Mixing mixing;
    mixing.parts = fill.boiled / fill.cold;
    answer::MixQuestion question{fill.reading, plan.levels.boiling, plan.trip->fire.cold_water,
                                 answer::Measure::volume};
    // What the same litres would make at once, with nothing lost.
    question.target = answer::mixed_temperature(question, mixing.parts);
    question.cold = answer::Frozen::slush;
    if (const auto iced = answer::mix(question)) {
        mixing.with_ice_water = iced->hot_parts;
    }
    return mixing;
}

}  // namespace holdwater::card
