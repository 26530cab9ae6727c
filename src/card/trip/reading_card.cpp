// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/reading_scale.hpp"
#include "facts/facts.hpp"
#include "plan/result/reading_rows.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

constexpr double reading_drawn_mm = 17.0;  // on a hand card

bool any_row(const plan::Plan& plan, safety::FallAction action) {
    return std::any_of(plan.night.morning.begin(), plan.night.morning.end(), [action](const plan::MorningRow& row) {
        return std::any_of(row.cells.begin(), row.cells.end(),
                           [action](const plan::MorningRow::Cell& cell) { return cell.action == action; });
    });
}

/// What the pots give at once, and when the next comes where a row asks for more.
Text boils_text(const CardWriter& writer, const CardFigures& on) {
    const int most = plan::most_boils(writer.plan);
    const char* key = most > 2 ? "reading.boils-more" : most > 1 ? "reading.boils-two" : "reading.boils-one";
    return writer.words.text(key, {{"litres", on("pots-give")}, {"minutes", on("round")}});
}

/// Food that was ready: up to where it stays so, and what it needs less than the rest.
Text ready_fallen(const CardWriter& writer, const CardFigures& on, bool timed) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Text told = w.text("reading.ready-stays", {{"floor", on.brief("read-floor-level")}});
    // Back into the bath is for whole food that was done and for eaters who are not at risk; all else goes to the fire.
    if (any_row(plan, safety::FallAction::finish_and_eat_next) && away_below(plan) && !writer.any_finish() &&
        !plan.trip->at_risk) {
        // Where the table asks how long ago it is, under 2 h is one of its columns.
        told += " " + (timed ? w.text("reading.ready-fell", {{"away", on.brief("away")}, {"mark", on.brief("mark")}})
                             : w.text("reading.ready-fell-since", {{"away", on.brief("away")},
                                                                   {"action", on.brief("action-line-level")},
                                                                   {"mark", on.brief("mark")}}));
    }
    return told;
}

/// What the words in the rows after a fall ask for, and whom and when they do not hold for.
void add_falls_told(const CardWriter& writer, const CardFigures& on, bool timed, Card& card) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const bool next = any_row(plan, safety::FallAction::finish_and_eat_next);
    const bool now = any_row(plan, safety::FallAction::finish_and_eat_now);
    if (next) {
        const Text heat = w.text("reading.heat", {{"full", full(writer, on)}, {"mark", on.brief("mark")}});
        card.blocks.add(Note{now ? heat + " " + w.text("reading.heat-then-eat") : heat});
    } else if (now) {
        card.blocks.add(Note{w.text("reading.heat-eat", {{"full", full(writer, on)}})});
    }
    // Where the fire alone makes it ready, nothing is before.
    if (!std::all_of(plan.foods.begin(), plan.foods.end(),
                     [](const plan::FoodPlan& food) { return food.standard.finish.has_value(); })) {
        card.blocks.add(Note{ready_fallen(writer, on, timed)});
    }
    // Where there is no second time, there is nothing to count on.
    const bool once = facts::facts().rules_of(plan.trip->rules).fall_once.has_value();
    Text last = w.text(once ? "reading.once" : "reading.again");
    if (!plan.trip->at_risk) {
        last += " " + w.text("reading.risk", {{"one", writer.ref("one")}});
    }
    card.blocks.add(Note{std::move(last)});
}

}  // namespace

Card reading_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("reading");
    Card card;
    const double floor = plan.levels.read_floor.celsius();
    card.blocks.add(Thermometer{good_readings(writer, on), floor});
    card.blocks.add(top_up_table(writer, on, false));
    card.blocks.add(
        Drawings{{shown_drawing(w, "out-then-in", w.text("reading.line", {{"mark", on("mark")}}))}, reading_drawn_mm});
    card.blocks.add(Note{boils_text(writer, on)});
    if (plan.mark_out_of_reach) {
        card.blocks.add(Note{w.text("reading.short", {{"mark", on("mark")}})});
    }
    card.blocks.add(Turn{});
    Thermometer::Section fallen = fallen_readings(writer, on);
    const bool timed = !fallen.heads.empty();
    card.blocks.add(Thermometer{{std::move(fallen)}, floor});
    add_falls_told(writer, on, timed, card);
    card.harmless = true;  // its table says in black and bold what is thrown away: a box below it would say less
    return card;
}

}  // namespace holdwater::card
