// SPDX-License-Identifier: MIT
#include "card/trip/plan_timeline.hpp"

#include "card/figures/fill_rounds.hpp"
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

namespace holdwater::card {
namespace {

using plan::Event;

struct TimedStep {
    units::LocalTime at;
    Step step;
};

/// When the first piece of the nth meal comes out for the pan; nothing where none of this box is seared for it.
std::optional<TimedStep> sear_step(const CardWriter& writer, const CardFigures& on, units::LocalTime meal, int nth) {
    std::string names;
    int steak = 0;  // the food of that number is one
    for (std::size_t i = 0; i < writer.plan.foods.size(); ++i) {
        const plan::FoodPlan& food = writer.plan.foods[i];
        if (plan::is_seared(food) && food.eaten == meal) {
            names += (names.empty() ? "" : ", ") + plain(food.food->name);
            steak = food.standard.sear ? static_cast<int>(i) + 1 : steak;
        }
    }
    if (names.empty()) {
        return std::nullopt;
    }
    const Text& out = on("first-piece-out", nth);
    const Text& side = on("sear-side", nth);
    const words::Words& w = writer.words;
    const bool several = writer.plan.foods.size() > 1;
    const auto told = [&](const char* one, const char* of) {
        return several ? w.text(of, {{"food", names}, {"side", side}}) : w.text(one, {{"side", side}});
    };
    const auto steak_told = [&] {
        const Text& surface = on("steak-surface", steak);
        return several ? w.text("plan.sear-steak-of", {{"food", names}, {"side", side}, {"surface", surface}})
                       : w.text("plan.sear-steak", {{"side", side}, {"surface", surface}});
    };
    Text text = steak > 0 ? steak_told() : told("plan.sear", "plan.sear-of");
    return TimedStep{on.moment("first-piece-out", nth), {out, std::move(text)}};
}

/// Out of the bath and over the fire, in time for the meal; the nth food.
Text finish_text(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food, int nth) {
    return writer.words.text(
        "plan.finish",
        {{"food", plain(food.food->name)},
         {"boil", writer.words.text(food.finishing->one.hard_boil ? "plan.boil-hard" : "plan.boil-gently")},
         {"takes", on("finish-takes", nth)},
         {"core", on("finish", nth)},
         {"hold", for_hold(writer, on, "finish-hold", nth)}});
}

Text pour_text(const CardWriter& writer, const CardFigures& on, const plan::Pour& pour, int nth) {
    const words::Words& w = writer.words;
    if (!pour.trims()) {
        return w.text("plan.pour",
                      {{"pots", w.text("plan.pots", {{"count", on.count("pots", nth)}})}, {"litres", on("pour", nth)}});
    }
    return writer.reads() ? w.text("plan.pour-last", {{"reading", on("fill")}, {"litres", on("pour", nth)}})
                          : w.text("plan.pour-last-measured", {{"litres", on("pour", nth)}});
}

Text top_up_text(const CardWriter& writer, const CardFigures& on, const plan::TopUp& top_up, int nth) {
    const words::Words& w = writer.words;
    const Text out = top_up.below_rim ? w.text("plan.out-first", {{"below", on("below-rim", nth)}}) : "";
    if (top_up.wakes) {
        return w.text("plan.top-up-wake",
                      {{"wake", on.brief("top-up-fire", nth)}, {"out", out}, {"litres", on("top-up", nth)}});
    }
    return w.text(writer.reads() ? "plan.top-up" : "plan.top-up-fixed", {{"out", out}, {"litres", on("top-up", nth)}});
}

Text ready_text(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food) {
    const words::Words& w = writer.words;
    const Text name = plain(food.food->name);
    if (food.standard.finish) {
        return w.text("plan.ready-raw", {{"food", name}});
    }
    return writer.reads()
               ? w.text("plan.ready", {{"food", name}, {"least", on("ready-if", food_place(writer.plan, food))}})
               : w.text("plan.ready-clock", {{"food", name}});
}

Text event_text(const CardWriter& writer, const CardFigures& on, const Event& event) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const int nth = static_cast<int>(event.index) + 1;  // of its kind
    const auto food = [&]() -> const plan::FoodPlan& { return plan.foods[event.index]; };
    switch (event.kind) {
        case Event::Kind::light_fire:
            return plan.fill.warming.si() > 0.0
                       ? w.text("plan.light-fire-warm", {{"litres", on("boil")}})
                       : w.text("plan.light-fire", {{"cold", on("cold")}, {"litres", on("boil")}});
        case Event::Kind::warm_box:
            return w.text("plan.warm-box", {{"litres", on("warming")}, {"cold", on("cold")}});
        case Event::Kind::pour:
            return pour_text(writer, on, plan.fill.pours[event.index], nth);
        case Event::Kind::food_in:
            return plan::all_in_at_once(plan)
                       ? w.text("plan.food-in")
                       : w.text("plan.this-food-in",
                                {{"food", plain(plan::names_at(plan, &plan::FoodPlan::in, event.at))}});
        case Event::Kind::boil_finish:
            return w.text("plan.boil-finish", {{"food", plain(food().food->name)}});
        case Event::Kind::finish:
            return finish_text(writer, on, food(), nth);
        case Event::Kind::take_out:
            return w.text("plan.take-out", {{"food", plain(food().food->name)}});
        case Event::Kind::top_up:
            return top_up_text(writer, on, plan.top_ups[event.index], nth);
        case Event::Kind::ready:
            return ready_text(writer, on, food());
        case Event::Kind::hot_water:
            return w.text("plan.hot-water", {{"litres", on("hot-water", nth)},
                                             {"name", plain(plan.around.hot_water.list[event.index].name)},
                                             {"at", on.brief("hot-water-at", nth)}});
        case Event::Kind::sitting:
            return w.text("plan.sitting", {{"at", on.brief("sitting", nth)}});
        case Event::Kind::serve:
            // Who is at risk needs more than the plan gives, unless it was made for them.
            return w.text(plan.trip->at_risk ? "plan.serve" : "plan.serve-risk");
    }
    return {};
}

/// The nth event, from 1.
Step step_of(const CardWriter& writer, const CardFigures& on, int nth) {
    const Event& event = writer.plan.events[static_cast<std::size_t>(nth) - 1];
    const Text& when = event.kind == Event::Kind::ready
                           ? on("ready", food_place(writer.plan, writer.plan.foods[event.index]))
                           : on("act", nth);
    return {when, event_text(writer, on, event)};
}

/// A last pot of next to nothing is no step.
bool worth_a_line(const CardWriter& writer, const Event& event) {
    return event.kind != Event::Kind::pour || worth_a_pour(writer.plan.fill.pours[event.index].most);
}

}  // namespace

Steps timeline_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const CardFigures on = writer.on("plan");
    std::vector<TimedStep> all;
    for (std::size_t i = 0; i < plan.events.size(); ++i) {
        if (worth_a_line(writer, plan.events[i])) {
            all.push_back({plan.events[i].at, step_of(writer, on, static_cast<int>(i) + 1)});
        }
    }
    int nth = 0;
    const auto add_sear = [&](units::LocalTime meal) {
        if (auto step = sear_step(writer, on, meal, ++nth)) {
            all.push_back(std::move(*step));
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(meal.serve);
    }
    add_sear(plan.trip->serve);
    std::stable_sort(all.begin(), all.end(), [](const TimedStep& a, const TimedStep& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (TimedStep& timed : all) {
        steps.steps.push_back(std::move(timed.step));
    }
    return steps;
}

}  // namespace holdwater::card
