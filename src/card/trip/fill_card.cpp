// SPDX-License-Identifier: MIT
#include "card/figures/fill_rounds.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/plan_timeline.hpp"

#include <initializer_list>

namespace holdwater::card {
namespace {

constexpr double fill_drawn_mm = 18.0;  // on a hand card

}  // namespace

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
    // What a hand does first is drawn: the air out of the bags, the box where it stays.
    card.blocks.add(
        Drawings{{shown_drawing(w, "press-air-out", w.text(plan.around.frost ? "fill.air-out-frost" : "fill.air-out")),
                  shown_drawing(w, "box-in-section", w.text("fill.box")),
                  shown_drawing(w, "no-wet-glove", w.text("fill.dry-gloves"))},
                 fill_drawn_mm});
    Steps steps;
    const auto step = [&](const char* key, std::initializer_list<words::Place> places = {}) {
        steps.add(w.text(key, places));
    };
    if (fill.warming.si() > 0.0) {
        step("fill.step-warm", {{"litres", on("warming")}});
    }
    if (fill.cold.si() > 0.0) {
        step("fill.step-cold", {{"litres", on("cold")}});
    }
    step(reads ? "fill.step-pour" : "fill.step-pour-measured", {{"rounds", rounds_text(writer, on)}});
    if (reads) {
        step("fill.step-read", {{"reading", on.brief("fill")}});
    }
    if (!reads && writer.wax()) {
        step("fill.step-wax");
    }
    if (fill.below_rim) {
        step("fill.step-level", {{"below", on("below-rim")}});
    }
    step("fill.step-food");
    const bool floats = std::any_of(plan.notes.begin(), plan.notes.end(),
                                    [](const problem::Problem& note) { return note.code == "food-floats"; });
    if (floats) {
        step("fill.step-floats");
    }
    card.blocks.add(steps);
    if (plan.foods.front().food->contact != facts::Contact::free) {
        card.blocks.add(Note{contact_line(writer)});  // the drawing shows them apart and off the bottom
    }
    card.warn_here(w.text("fill.caution", {{"mass", on("heavy")}, {"away", writer.children_away()}}));
    return card;
}

}  // namespace holdwater::card
