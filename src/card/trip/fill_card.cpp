// SPDX-License-Identifier: MIT
#include "card/figures/fill_rounds.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/cards.hpp"

#include <initializer_list>

namespace holdwater::card {

Card fill_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const plan::Fill& fill = plan.fill;
    const bool reads = writer.reads();
    const CardFigures on = writer.on("fill");
    Card card;
    if (reads) {
        card.blocks.add(on.key(w.text("fill.key-label"), "fill", {}, w.text("fill.key-aside")));
    } else {
        card.blocks.add(on.key(w.text("fill.key-label-measured"), "boil-short", {},
                               w.text("fill.key-aside-measured", {{"cold", on("cold")}})));
    }
    Steps steps;
    const auto step = [&](const char* key, std::initializer_list<words::Place> places = {}) {
        steps.add(w.text(key, places));
    };
    step(plan.around.frost ? "fill.step-place-frost" : "fill.step-place");
    step("fill.step-cold", {{"litres", on("cold")}});
    if (const int whole_pots = full_pots(plan); whole_pots > 0) {
        const bool together = plan.trip->fire.pots > 1 && whole_pots > 1;
        step("fill.step-pots",
             {{"count", on.count("whole-pots")},
              {"litres", on("pot")},
              {"together", together ? w.text("fill.together", {{"pots", on.count("together")}}) : ""}});
    }
    if (reads) {
        step("fill.step-trim", {{"litres", on("trim")}, {"reading", on.brief("fill")}});
    } else if (worth_a_pour(to_trim(plan))) {
        step("fill.step-trim-measured", {{"litres", on("trim")}});
    }
    if (!reads && writer.wax()) {
        step("fill.step-wax");
    }
    if (fill.below_rim) {
        step("fill.step-level", {{"below", on("below-rim")}});
    }
    step("fill.step-food");
    card.blocks.add(steps);
    card.blocks.add(Note{contact_line(writer)});
    card.warn_here(w.text("fill.caution", {{"mass", on("heavy")}, {"away", writer.children_away()}}));
    return card;
}

}  // namespace holdwater::card
