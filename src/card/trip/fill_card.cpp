// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::card {

using units::Toward;

namespace {

Steps lines(const CardWriter& hand, const std::vector<const char*>& keys) {
    Steps steps;
    for (const char* key : keys) {
        steps.steps.push_back({"", hand.words.text(key)});
    }
    return steps;
}

}  // namespace

Card fill_card(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const plan::Fill& fill = plan.fill;
    const bool reads = hand.reads();
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
        card.blocks.emplace_back(hand.key(w.text("fill.key-label-measured"), hand.litres_short(fill.boiled),
                                          w.text("fill.key-aside-measured", {{"cold", hand.litres(fill.cold)}})));
    }
    Steps steps;
    const auto step = [&](const char* key, std::initializer_list<words::Words::Place> places = {}) {
        steps.steps.push_back({"", w.text(key, places)});
    };
    step("fill.step-place");
    step("fill.step-cold", {{"litres", hand.litres(fill.cold)}});
    if (whole_pots > 0) {
        const int pots = plan.trip->fire.pots;
        const std::string together =
            pots > 1 && whole_pots > 1 ? w.text("fill.together", {{"pots", fmt::format("{}", pots)}}) : "";
        step(whole_pots == 1 ? "fill.step-pots-one" : "fill.step-pots",
             {{"count", fmt::format("{}", whole_pots)},
              {"litres", hand.measured(pot, Toward::down)},
              {"together", together}});
    }
    if (reads) {
        step("fill.step-trim", {{"litres", hand.litres_short(trim)}, {"reading", hand.short_degrees(fill.reading)}});
    } else if (worth_a_pour(trim)) {
        step("fill.step-trim-measured", {{"litres", hand.measured(trim)}});
    }
    if (!reads && hand.wax()) {
        step("fill.step-wax");
    }
    step("fill.step-food");
    card.blocks.emplace_back(steps);
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(Heading{w.text("fill.back-heading")});
    card.blocks.emplace_back(
        lines(hand, reads ? std::vector<const char*>{"fill.back-1", "fill.back-2", "fill.back-3", "fill.back-4"}
                          : std::vector<const char*>{"fill.back-1", "fill.back-2", "fill.back-3"}));
    if (reads) {
        card.blocks.emplace_back(Note{
            w.text("fill.settled", {{"low", hand.short_degrees(fill.after_food.low, Toward::down)},
                                    {"high", hand.short_degrees(fill.after_food.high, Toward::up)}})});
    }
    card.blocks.emplace_back(Heading{w.text("fill.bags-heading")});
    card.blocks.emplace_back(lines(hand, {"fill.bags-1", "fill.bags-2", "fill.bags-3"}));
    card.blocks.emplace_back(Heading{w.text("fill.burn-heading")});
    card.blocks.emplace_back(Note{w.text("fill.first-aid")});
    const units::Mass heavy{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
    card.cautions.push_back(
        {SignalWord::warning, w.text("fill.caution", {{"mass", units::print(heavy, hand.system(), {1.0})},
                                                       {"away", hand.children_away()}})});
    return card;
}

}  // namespace holdwater::card
