// SPDX-License-Identifier: MIT
#include "card/trip/plan_timeline.hpp"

#include "card/shared/water_line.hpp"
#include "card/trip/kitchen.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace holdwater::card {
namespace {

using plan::Event;
using units::Toward;

struct TimedStep {
    units::LocalTime at;
    Step step;
};

/// When the first piece of a meal comes out for the pan; nothing where none of this box is seared for it.
std::optional<TimedStep> sear_step(const CardWriter& writer, const plan::Sear& sear, units::LocalTime meal) {
    std::string names;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        if (!food.standard.finish && food.eaten == meal) {
            names += (names.empty() ? "" : ", ") + plain(food.food->name);
        }
    }
    if (names.empty()) {
        return std::nullopt;
    }
    const units::LocalTime out = first_piece_out(writer.plan, sear, meal);
    const char* key = writer.plan.foods.size() > 1 ? "plan.sear-of" : "plan.sear";
    return TimedStep{
        out,
        {writer.clock(out),
         writer.words.text(key, {{"food", names}, {"side", units::figure(sear.side.si(), 1.0, Toward::nearest)}})}};
}

/// Out of the bath and over the fire, in time for the meal.
Step finish(const CardWriter& writer, const plan::FoodPlan& food) {
    return {writer.clock(food.leaves()),
            writer.words.text(
                "plan.finish",
                {{"food", plain(food.food->name)},
                 {"boil", writer.words.text(food.finishing->one.hard_boil ? "plan.boil-hard" : "plan.boil-gently")},
                 {"takes", fire_time(food.finishing->one.simmering)},
                 {"core", writer.limit(food.standard.finish->core)},
                 {"hold", writer.for_hold(food.standard.finish->hold)}})};
}

Step step_of(const CardWriter& writer, const Event& event) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const std::string when = writer.clock(event.at);
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    switch (event.kind) {
        case Event::Kind::light_fire:
            if (plan.fill.warming.si() > 0.0) {
                return {
                    when,
                    w.text("plan.light-fire-warm",
                           {{"litres", writer.litres_short(plan.fill.boiled_most + plan.fill.warming, Toward::up)}})};
            }
            return {when,
                    w.text("plan.light-fire", {{"cold", writer.litres_short(plan.fill.cold)},
                                               {"litres", writer.litres_short(plan.fill.boiled_most, Toward::up)}})};
        case Event::Kind::warm_box:
            return {when, w.text("plan.warm-box", {{"litres", writer.litres_short(plan.fill.warming, Toward::down)},
                                                   {"cold", writer.litres_short(plan.fill.cold)}})};
        case Event::Kind::pour: {
            const plan::Pour& pour = plan.fill.pours[event.index];
            if (pour.trims()) {
                return {when, reads ? w.text("plan.pour-last", {{"reading", writer.about(plan.fill.reading)},
                                                                {"litres", writer.one_boil(pour.most)}})
                                    : w.text("plan.pour-last-measured", {{"litres", writer.measured(pour.boiling)}})};
            }
            return {when, w.text("plan.pour", {{"pots", w.text("plan.pots", {{"count", pour.pots}})},
                                               {"litres", writer.measured(pour.boiling)}})};
        }
        case Event::Kind::food_in:
            return {when, plan::all_in_at_once(plan)
                              ? w.text("plan.food-in")
                              : w.text("plan.this-food-in",
                                       {{"food", plain(plan::names_at(plan, &plan::FoodPlan::in, event.at))}})};
        case Event::Kind::boil_finish:
            return {when, w.text("plan.boil-finish", {{"food", plain(plan.foods[event.index].food->name)}})};
        case Event::Kind::finish:
            return finish(writer, plan.foods[event.index]);
        case Event::Kind::take_out:
            return {when, w.text("plan.take-out", {{"food", plain(plan.foods[event.index].food->name)}})};
        case Event::Kind::top_up: {
            const plan::TopUp& top_up = plan.top_ups[event.index];
            const std::string out =
                top_up.below_rim ? w.text("plan.out-first", {{"below", water_line(writer, *top_up.below_rim)}}) : "";
            const char* key = top_up.wakes ? "plan.top-up-wake" : reads ? "plan.top-up" : "plan.top-up-fixed";
            return {when, w.text(key, {{"wake", writer.clock_only(top_up.light_fire)},
                                       {"out", out},
                                       {"litres", writer.one_boil(top_up.boiling)}})};
        }
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            if (food.standard.finish) {
                return {when, w.text("plan.ready-raw", {{"food", plain(food.food->name)}})};
            }
            if (!reads) {
                return {when, w.text("plan.ready-clock", {{"food", plain(food.food->name)}})};
            }
            return {when, w.text("plan.ready", {{"food", plain(food.food->name)},
                                                {"least", writer.short_degrees(food.ready_if, Toward::up)}})};
        }
        case Event::Kind::serve:
            // Who is at risk needs more than the plan gives, unless it was made for them.
            return {when, w.text(plan.trip->at_risk ? "plan.serve" : "plan.serve-risk")};
    }
    return {};
}

/// A last pot of next to nothing is no step.
bool worth_a_line(const CardWriter& writer, const Event& event) {
    return event.kind != Event::Kind::pour || worth_a_pour(writer.plan.fill.pours[event.index].most);
}

}  // namespace

Steps timeline_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    std::vector<TimedStep> all;
    for (const Event& event : plan.events) {
        if (worth_a_line(writer, event)) {
            all.push_back({event.at, step_of(writer, event)});
        }
    }
    const auto add_sear = [&](const plan::Sear& sear, units::LocalTime meal) {
        if (auto step = sear_step(writer, sear, meal)) {
            all.push_back(std::move(*step));
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(meal.sear, meal.serve);
    }
    add_sear(plan.around.sear, plan.trip->serve);
    std::stable_sort(all.begin(), all.end(), [](const TimedStep& a, const TimedStep& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (TimedStep& timed : all) {
        steps.steps.push_back(std::move(timed.step));
    }
    return steps;
}

}  // namespace holdwater::card
