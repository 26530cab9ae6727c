// SPDX-License-Identifier: MIT
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/reading_scale.hpp"
#include "facts/facts.hpp"

#include <utility>

namespace holdwater::card {
namespace {

constexpr double reading_drawn_mm = 17.0;  // on a hand card

}  // namespace

Card reading_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("reading");
    Card card;
    const double floor = plan.levels.read_floor.celsius();
    card.blocks.add(Thermometer{{good_readings(writer, on)}, floor});
    card.blocks.add(Note{w.text("reading.act", {{"action", on("action-line-level")}}) + " " +
                         w.text("reading.pots", {{"minutes", on("round")}, {"litres", on("pots-give")}})});
    card.blocks.add(
        Drawings{{shown_drawing(w, "out-then-in", w.text("reading.line", {{"mark", on("mark")}}))}, reading_drawn_mm});
    if (plan.mark_out_of_reach) {
        card.blocks.add(Note{w.text("reading.short", {{"mark", on("mark")}})});
    }
    card.blocks.add(Turn{});
    card.blocks.add(Thermometer{{fallen_readings(writer, on)}, floor});
    Text fall = w.text("reading.full", {{"full", full(writer, on)}}) + " ";
    // Back into the bath is for whole food that was done and for eaters who are not at risk; all else goes to the fire.
    if (!writer.any_finish() && !plan.trip->at_risk) {
        fall += w.text("reading.ready-before", {{"mark", on("mark")}}) + " ";
    }
    fall += w.text("reading.again");
    if (facts::facts().rules_of(plan.trip->rules).fall_once) {
        fall += " " + w.text("reading.once");  // no second time there
    }
    fall += " " + w.text("reading.toxin") + " " + w.text("reading.caution");
    card.blocks.add(Note{std::move(fall)});
    if (!plan.trip->at_risk) {
        card.blocks.add(Note{w.text("reading.risk", {{"one", writer.ref("one")}})});
    }
    card.harmless = true;  // its table says in black and bold what is thrown away: a box below it would say less
    return card;
}

}  // namespace holdwater::card
