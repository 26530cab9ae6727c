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
    int pots = 0;
    for (std::size_t i = 0; i < fill.pours.size(); ++i) {
        pots += fill.pours[i].pots;
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
    const auto litre_key = [&](const char* label, units::Volume v) {
        return KeyNumber{w.text(label), units::number(units::round_to(units::in_litres(v), 0.5, Toward::nearest), 1), "L", ""};
    };
    card.blocks.emplace_back(KeyRow{{litre_key("fill.cold-label", fill.cold), litre_key("fill.boiling-label", fill.boiled),
                                     KeyNumber{w.text("fill.pots-label"), fmt::format("{}", pots), "", ""}}});
    Steps steps;
    steps.steps.push_back({"", w.text("fill.step-place")});
    steps.steps.push_back({"", w.text("fill.step-bag")});
    steps.steps.push_back({"", w.text("fill.step-cold", {{"litres", hand.litres(fill.cold)}})});
    if (whole_pots > 0) {
        steps.steps.push_back({"", w.text(whole_pots == 1 ? "fill.step-pots-one" : "fill.step-pots",
                                          {{"count", fmt::format("{}", whole_pots)}, {"litres", hand.litres(pot)}})});
    }
    if (reads) {
        steps.steps.push_back({"", w.text(whole_pots > 0 ? "fill.step-trim" : "fill.step-trim-only",
                                          {{"litres", hand.litres(trim)}, {"reading", hand.about(fill.reading)}})});
    } else {
        steps.steps.push_back({"", w.text("fill.step-trim-measured", {{"litres", hand.litres(last)}})});
    }
    steps.steps.push_back({"", w.text("fill.step-food")});
    card.blocks.emplace_back(steps);
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Note{w.text("fill.boils-at", {{"boiling", hand.about(fill.boiling)}})});
    card.blocks.emplace_back(Note{w.text("fill.settled", {{"low", hand.at_most(units::celsius(fill.after_food.low))},
                                                          {"high", hand.at_least(units::celsius(fill.after_food.high))}})});
    card.blocks.emplace_back(Heading{w.text("fill.back-heading")});
    card.blocks.emplace_back(Steps{{{"", w.text("fill.back-1")},
                                    {"", w.text("fill.back-2")},
                                    {"", w.text("fill.back-3")},
                                    {"", w.text("fill.back-4")}},
                                   true});
    const units::Mass heavy{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
    card.cautions.push_back(
        {SignalWord::warning, w.text("fill.caution", {{"mass", units::print(heavy, hand.system(), {1.0})}})});
    card.cautions.push_back({SignalWord::none, w.text("fill.first-aid")});
    return card;
}

}  // namespace holdwater::card
