// SPDX-License-Identifier: MIT
// The whole trip on one card: face the day, back what to do at a reading.
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/acts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/food_lines.hpp"
#include "card/trip/plan_timeline.hpp"
#include "card/trip/reading_scale.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

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
    const auto name = [&] { return name_of(writer, *food().food); };
    switch (event.kind) {
        case Kind::light_fire:
            return w.text("one.light-fire", {{"latest", latest_text(writer, on)}});
        case Kind::food_in:
            return plan::all_in_at_once(plan)
                       ? w.text("one.food-in")
                       : w.text("plan.this-food-in", {{"food", names_at(writer, &plan::FoodPlan::in, event.at)}});
        case Kind::top_up: {
            const int nth = static_cast<int>(event.index) + 1;
            const Text& fire = on.brief("top-up-fire", nth);
            return writer.reads() ? w.text("one.top-up", {{"fire", fire}, {"reading", writer.ref("reading")}})
                                  : w.text("one.top-up-fixed", {{"litres", on("top-up", nth)}, {"fire", fire}});
        }
        case Kind::warm_box:
            return w.text("fill.step-warm", {{"litres", on("warming")}});
        case Kind::ready:
            if (food().standard.finish) {
                return "";  // the fire is what it waits for
            }
            return ready_text(writer, on, food());
        case Kind::finish:
            return w.text("one.finish",
                          {{"food", name()},
                           {"core", on("finish", static_cast<int>(event.index) + 1)},
                           {"hold", for_hold(writer, on, "finish-hold", static_cast<int>(event.index) + 1)},
                           {"floor", where_asked(writer, "one.finish", "floor", on, "read-floor-level", {})}});
        case Kind::take_out:
            return w.text("plan.take-out", {{"food", name()}});
        case Kind::serve:
            return w.text("one.eat", {{"plan", writer.ref("plan")}});
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
    Steps steps;
    steps.numbered = false;
    int nth = 0;
    for (const plan::Event& event : plan.events) {
        ++nth;
        if (Text text = act_text(writer, on, event); !text.empty()) {
            steps.add(on("act", nth), std::move(text));
        }
    }
    return steps;
}

/// Where to look for another thickness than the trip's; nothing of several foods, which Packing lists.
Text thickness_text(const CardWriter& writer, const CardFigures& on) {
    const plan::FoodPlan& food = writer.plan.foods.front();
    if (writer.plan.foods.size() > 1 || food.standard.kept_hot) {
        return "";
    }
    const Text& thickness = on("thickness", 1);
    return has_bars(food) ? writer.words.text("one.thicker", {{"thickness", thickness}, {"hold", writer.ref("hold")}})
                          : writer.words.text("one.thicker-none", {{"thickness", thickness}});
}

}  // namespace

Card one_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("one");
    Card card;
    card.blocks.add(water_of(writer, on));
    card.blocks.add(day_of(writer, on));
    if (const Text thickness = thickness_text(writer, on); !thickness.empty()) {
        card.blocks.add(Note{thickness});
    }
    for (Note& note : hot_lines(writer, on)) {
        card.blocks.add(std::move(note));
    }
    if (writer.reads()) {
        card.blocks.add(Turn{});
        card.blocks.add(Thermometer{short_readings(writer, on), plan.levels.read_floor.celsius()});
        card.blocks.add(top_up_table(writer, on, true));
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
        card.blocks.add(Note{w.text("one.risk", {{"full", full(writer, on)}})});
    }
    card.warn_here(w.text("one.scald", {{"mass", on("heavy")}, {"away", writer.children_away()}}) + " " +
                   w.text("one.fumes"));
    return card;
}

}  // namespace holdwater::card
