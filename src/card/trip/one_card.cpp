// SPDX-License-Identifier: MIT
// The whole trip on one card: face the day, back what to do at a reading.
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/shared/shown_drawing.hpp"
#include "card/trip/acts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/food_lines.hpp"
#include "card/trip/reading_scale.hpp"

#include <utility>

namespace holdwater::card {
namespace {

constexpr double one_drawn_mm = 19.0;  // on a hand card

KeyRow water_of(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    KeyRow row;
    if (writer.reads()) {
        row.numbers.push_back(on.key(w.text("one.fill"), "fill"));
    }
    row.numbers.push_back(on.key(w.text("one.cold"), "cold"));
    row.numbers.push_back(on.key(w.text("one.boiling"), "boiled"));
    return row;
}

Text act_text(const CardWriter& writer, const CardFigures& on, const plan::Event& event) {
    using Kind = plan::Event::Kind;
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const auto food = [&]() -> const plan::FoodPlan& { return plan.foods[event.index]; };
    const auto name = [&] { return plain(food().food->name); };
    switch (event.kind) {
        case Kind::light_fire:
            return w.text("one.light-fire", {{"latest", on("latest-fire")}});
        case Kind::food_in:
            return plan::all_in_at_once(plan)
                       ? w.text("one.food-in")
                       : w.text("plan.this-food-in",
                                {{"food", plain(plan::names_at(plan, &plan::FoodPlan::in, event.at))}});
        case Kind::top_up:
            return w.text("one.top-up", {{"litres", on("top-up", static_cast<int>(event.index) + 1)}});
        case Kind::ready:
            if (food().standard.finish) {
                return "";  // the fire is what it waits for
            }
            return writer.reads()
                       ? w.text("one.ready", {{"food", name()}, {"least", on("ready-if", food_place(plan, food()))}})
                       : w.text("one.ready-clock", {{"food", name()}});
        case Kind::finish:
            return w.text("one.finish",
                          {{"food", name()},
                           {"core", on("finish", static_cast<int>(event.index) + 1)},
                           {"hold", for_hold(writer, on, "finish-hold", static_cast<int>(event.index) + 1)}});
        case Kind::take_out:
            return w.text("plan.take-out", {{"food", name()}});
        case Kind::serve:
            return w.text("one.eat");
        case Kind::warm_box:
        case Kind::pour:
        case Kind::boil_finish:
        case Kind::hot_water:
        case Kind::sitting:
            return "";
    }
    return {};
}

Steps day_of(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Steps steps;
    steps.numbered = false;
    int nth = 0;
    for (const plan::Event& event : plan.events) {
        ++nth;
        if (Text text = act_text(writer, on, event); !text.empty()) {
            steps.add(on("act", nth), std::move(text));
        }
    }
    if (plan.waits_until > plan.trip->serve) {
        const auto told = [&] {
            return writer.reads() ? w.text("one.wait", {{"least", on("waits-if")}}) : w.text("one.wait-clock");
        };
        steps.add(on("waits-until"), told());
    }
    return steps;
}

Thermometer scale_of(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Thermometer scale;
    scale.floor = plan.levels.read_floor.celsius();
    Thermometer::Section good;
    good.rows.push_back({plan.levels.action_line.celsius(),
                         w.text("one.over", {{"reading", on.brief("action-line-level")}}),
                         {w.text("one.leave")}});
    for (int nth = 1; nth <= static_cast<int>(plan.ladder.size()); ++nth) {
        if (plan.ladder[static_cast<std::size_t>(nth) - 1].reading > plan.levels.action_line) {
            continue;  // for a top-up at its time; until then it is left
        }
        good.rows.push_back({plan.ladder[static_cast<std::size_t>(nth) - 1].reading.celsius(),
                             on("reads", nth),
                             {w.text("one.pour", {{"below", on("below-rim", nth)}, {"litres", on("pour", nth)}})}});
    }
    scale.sections.push_back(std::move(good));
    Thermometer::Section fallen;
    fallen.bar = w.text("one.below", {{"floor", on("read-floor-level")}, {"reading", writer.ref("reading")}});
    if (away_below(plan)) {
        fallen.rows.push_back({plan.night.morning.back().reading.celsius(),
                               w.text("reading.below", {{"reading", on("away")}}),
                               {w.text("reading.action-away")}});
    }
    scale.sections.push_back(std::move(fallen));
    return scale;
}

}  // namespace

Card one_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("one");
    Card card;
    card.blocks.add(water_of(writer, on));
    card.blocks.add(day_of(writer, on));
    for (Note& note : food_lines(writer, on)) {
        card.blocks.add(std::move(note));
    }
    card.blocks.add(Note{w.text("one.thicker", {{"hold", writer.ref("hold")}})});
    card.blocks.add(Turn{});
    if (writer.reads()) {
        card.blocks.add(scale_of(writer, on));
    } else {
        card.blocks.add(Note{plan.top_ups.empty()
                                 ? w.text("one.by-clock-none")
                                 : w.text("one.by-clock", {{"late", on("late")}, {"trouble", writer.ref("trouble")}})});
    }
    if (plan.trip->at_risk) {
        card.blocks.add(Note{w.text("one.risk-planned")});
    } else if (!writer.reads() || none_at_risk(plan)) {
        card.blocks.add(Note{w.text("one.risk-none")});
    } else {
        card.blocks.add(Drawings{{shown_drawing(w, "probe-in-core", w.text("one.risk", {{"full", full(writer, on)}}))},
                                 one_drawn_mm});
    }
    card.warn_here(w.text("one.scald", {{"mass", on("heavy")}, {"away", writer.children_away()}}) + " " +
                   w.text("one.fumes"));
    return card;
}

}  // namespace holdwater::card
