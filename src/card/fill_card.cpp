// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <cmath>

#include "card/cards.hpp"
#include "units/print.hpp"

namespace holdwater::card {

using units::Toward;

Card fill_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const plan::Fill& fill = plan.fill;
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    const units::Volume last = fill.pours.back().boiling;
    const units::Volume pot = plan.trip->fire.pot * plan.trip->fire.usable;
    int whole_pots = 0;
    for (std::size_t i = 0; i < fill.pours.size(); ++i) {
        whole_pots += i + 1 < fill.pours.size() ? fill.pours[i].pots : fill.pours[i].pots - 1;
    }
    const units::Volume trim = fill.boiled - pot * whole_pots;
    Card card;
    if (reads) {
        card.blocks.emplace_back(
            hand.key(w.text("fill.key-label"), fill.reading, Toward::nearest, w.text("fill.key-aside")));
    } else {
        card.blocks.emplace_back(KeyNumber{w.text("fill.key-label-measured"),
                                           units::number(units::round_to(units::in_litres(fill.boiled), 0.5, Toward::nearest), 1),
                                           "L", w.text("fill.key-aside-measured", {{"cold", hand.litres(fill.cold)}})});
    }
    Steps steps;
    const auto step = [&](const char* key, std::initializer_list<words::Words::Place> places = {}) {
        steps.steps.push_back({"", w.text(key, places)});
    };
    step("fill.step-place");
    step("fill.step-cold", {{"litres", hand.litres(fill.cold)}});
    if (whole_pots > 0) {
        step(whole_pots == 1 ? "fill.step-pots-one" : "fill.step-pots",
             {{"count", fmt::format("{}", whole_pots)}, {"litres", hand.litres_short(pot)}});
    }
    if (reads) {
        step("fill.step-trim", {{"litres", hand.litres_short(trim)}, {"reading", hand.short_degrees(fill.reading)}});
    } else {
        step("fill.step-trim-measured", {{"litres", hand.litres(last)}});
    }
    step("fill.step-food");
    card.blocks.emplace_back(steps);
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Heading{w.text("fill.back-heading")});
    card.blocks.emplace_back(Steps{{{"", w.text("fill.back-1")},
                                    {"", w.text("fill.back-2")},
                                    {"", w.text("fill.back-3")},
                                    {"", w.text("fill.back-4")}},
                                   true});
    card.blocks.emplace_back(Note{w.text("fill.boils-at", {{"boiling", hand.about(fill.boiling)}})});
    card.blocks.emplace_back(
        Note{w.text("fill.settled", {{"low", hand.short_degrees(units::celsius(std::floor(fill.after_food.low)))},
                                     {"high", hand.short_degrees(units::celsius(std::ceil(fill.after_food.high)))}})});
    card.blocks.emplace_back(Heading{w.text("fill.burn-heading")});
    card.blocks.emplace_back(Note{w.text("fill.first-aid")});
    const units::Mass heavy{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
    card.cautions.push_back(
        {SignalWord::warning, w.text("fill.caution", {{"mass", units::print(heavy, hand.system(), {1.0})}})});
    return card;
}

}  // namespace holdwater::card
