// SPDX-License-Identifier: MIT
#include "card/shared/fill_rounds.hpp"
#include "card/trip/cards.hpp"
#include "units/print.hpp"

#include <cmath>
#include <initializer_list>

namespace holdwater::card {

using units::Toward;

namespace {

Steps lines(const CardWriter& writer, std::initializer_list<const char*> keys) {
    Steps steps;
    for (const char* key : keys) {
        steps.add(writer.words.text(key));
    }
    return steps;
}

/// What is poured to the reading, or measured: a round of pots each.
void add_trims(const CardWriter& writer, Steps& steps) {
    const std::vector<FillRound> rounds = fill_rounds(writer.plan);
    for (std::size_t i = 0; i < rounds.size(); ++i) {
        const bool last = i + 1 == rounds.size();
        if (rounds[i].full || (last && !writer.reads() && !worth_a_pour(rounds[i].boiling))) {
            continue;
        }
        if (writer.reads()) {
            steps.add(writer.words.text(last ? "fill.step-trim" : "fill.step-trim-more",
                                        {{"count", rounds[i].pots},
                                         {"litres", writer.litres_short(rounds[i].boiling, Toward::up)},
                                         {"reading", writer.short_degrees(writer.plan.fill.reading)}}));
        } else {
            steps.add(writer.words.text("fill.step-trim-measured", {{"litres", writer.measured(rounds[i].boiling)}}));
        }
    }
}

}  // namespace

Card fill_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const plan::Fill& fill = plan.fill;
    const bool reads = writer.reads();
    const int whole_pots = full_pots(plan);
    Card card;
    if (reads) {
        card.blocks.add(writer.key(w.text("fill.key-label"), fill.reading, Toward::nearest, w.text("fill.key-aside")));
    } else {
        card.blocks.add(writer.key(w.text("fill.key-label-measured"), writer.litres_short(fill.boiled),
                                   w.text("fill.key-aside-measured", {{"cold", writer.litres(fill.cold)}})));
    }
    Steps steps;
    const auto step = [&](const char* key, std::initializer_list<words::Place> places = {}) {
        steps.add(w.text(key, places));
    };
    step(plan.around.frost ? "fill.step-place-frost" : "fill.step-place");
    step("fill.step-cold", {{"litres", writer.litres(fill.cold)}});
    if (whole_pots > 0) {
        const int pots = plan.trip->fire.pots;
        const std::string together = pots > 1 && whole_pots > 1 ? w.text("fill.together", {{"pots", pots}}) : "";
        step("fill.step-pots", {{"count", whole_pots},
                                {"litres", writer.measured(pot_gives(plan), Toward::down)},
                                {"together", together}});
    }
    add_trims(writer, steps);
    if (!reads && writer.wax()) {
        step("fill.step-wax");
    }
    step("fill.step-food");
    card.blocks.add(steps);
    card.blocks.add(Turn{});
    card.blocks.add(Heading{w.text("fill.back-heading")});
    card.blocks.add(reads ? lines(writer, {"fill.back-1", "fill.back-2", "fill.back-3", "fill.back-4"})
                          : lines(writer, {"fill.back-1", "fill.back-2", "fill.back-3"}));
    if (reads) {
        card.blocks.add(
            Note{w.text("fill.settled", {{"low", writer.short_degrees(fill.after_food.low, Toward::down)},
                                         {"high", writer.short_degrees(fill.after_food.high, Toward::up)}})});
    }
    card.blocks.add(Heading{w.text("fill.bags-heading")});
    card.blocks.add(lines(writer, {"fill.bags-1", "fill.bags-2", "fill.bags-3"}));
    card.blocks.add(Heading{w.text("fill.burn-heading")});
    card.blocks.add(Note{w.text("fill.first-aid")});
    const units::Mass heavy{std::ceil(units::in_litres(plan.trip->boxes.front().water) / 5.0) * 5.0};
    card.warn(w.text("fill.caution",
                     {{"mass", units::amount(heavy, writer.system(), {1.0})}, {"away", writer.children_away()}}));
    return card;
}

}  // namespace holdwater::card
