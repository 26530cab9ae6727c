// SPDX-License-Identifier: MIT
#include "card/trip/plan_timeline.hpp"

#include "card/figures/fill_rounds.hpp"
#include "card/figures/pan_fire.hpp"
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/acts.hpp"
#include "card/trip/food_lines.hpp"
#include "plan/result/ready_condition.hpp"

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
            names += (names.empty() ? "" : ", ") + name_of(writer, *food.food);
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
    const words::Words& w = writer.words;
    const char* key = food.finishing->one.pan ? "plan.finish-pan" : "plan.finish";
    Text text = w.text(key, {{"food", name_of(writer, *food.food)},
                             {"boil", w.text(food.finishing->one.hard_boil ? "plan.boil-hard" : "plan.boil-gently")},
                             {"takes", on("finish-takes", nth)},
                             {"pan", where_asked(writer, key, "pan", on, "finish-pan", nth)},
                             {"core", on("finish", nth)},
                             {"hold", for_hold(writer, on, "finish-hold", nth)}});
    if (food.finishing->lots > 1) {
        text += " " + w.text("plan.finish-lots", {{"count", on.count("finish-lots", nth)}});
    }
    return text;
}

/// A last pot of next to nothing is no step.
bool worth_a_line(const plan::Pour& pour) {
    return worth_a_pour(pour.most);
}

/// All rounds of the fill in a line, told at the first: each with its time, and where to stop.
Text pour_text(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    const Text rounds = rounds_text(writer, on);
    return writer.reads() ? w.text("plan.pours", {{"rounds", rounds}, {"reading", on("fill")}})
                          : w.text("plan.pours-measured", {{"rounds", rounds}});
}

Text top_up_text(const CardWriter& writer, const CardFigures& on, const plan::TopUp& top_up, int nth) {
    const words::Words& w = writer.words;
    if (writer.reads()) {
        // How much goes out and in says Reading alone, by what it reads then.
        return w.text("plan.top-up", {{"mark", on("top-up-mark")},
                                      {"reads", on.brief("top-up-reads", nth)},
                                      {"reading", writer.ref("reading")}});
    }
    const Text out = top_up.below_rim ? w.text("plan.out-first", {{"below", on("below-rim", nth)}}) : "";
    return w.text("plan.top-up-fixed", {{"out", out}, {"litres", on("top-up", nth)}});
}

Text serve_text(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    Text text = w.text("plan.serve");
    // Who is at risk needs more than the plan gives, unless it was made for them.
    if (!plan.trip->at_risk) {
        text += " " + w.text("plan.serve-risk", {{"one", writer.ref("one")}});
    }
    return text + " " + w.text("plan.serve-left", {{"packing", writer.ref("packing")}});
}

Text event_text(const CardWriter& writer, const CardFigures& on, const Event& event) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const int nth = static_cast<int>(event.index) + 1;  // of its kind
    const auto food = [&]() -> const plan::FoodPlan& { return plan.foods[event.index]; };
    switch (event.kind) {
        case Event::Kind::light_fire:
            return plan.fill.warming.si() > 0.0 ? w.text("plan.light-fire-warm", {{"litres", on("boil")},
                                                                                  {"warming", on("warming")},
                                                                                  {"fill", on("boil-fill")},
                                                                                  {"latest", latest_text(writer, on)}})
                   : plan.fill.cold.si() <= 0.0
                       ? w.text("plan.light-fire-hot", {{"litres", on("boil")}, {"latest", latest_text(writer, on)}})
                       : w.text("plan.light-fire",
                                {{"cold", on("cold")}, {"litres", on("boil")}, {"latest", latest_text(writer, on)}});
        case Event::Kind::warm_box:
            return w.text("plan.warm-box", {{"litres", on("warming")}, {"cold", on("cold")}});
        case Event::Kind::pour:
            return pour_text(writer, on);
        case Event::Kind::food_in:
            return plan::all_in_at_once(plan)
                       ? w.text("plan.food-in")
                       : w.text("plan.this-food-in", {{"food", names_at(writer, &plan::FoodPlan::in, event.at)}});
        case Event::Kind::boil_finish:
            return w.text("plan.boil-finish",
                          {{"litres", on.brief("finish-water", nth)}, {"food", name_of(writer, *food().food)}});
        case Event::Kind::finish:
            return finish_text(writer, on, food(), nth);
        case Event::Kind::take_out:
            return w.text("plan.take-out", {{"food", name_of(writer, *food().food)}});
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
            return serve_text(writer);
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

using TimedSteps = std::vector<TimedStep>;

/// The fire of each top-up, before it.
void add_fires(const CardWriter& writer, const CardFigures& on, TimedSteps& all) {
    int nth = 0;
    for (const plan::TopUp& top_up : writer.plan.top_ups) {
        ++nth;
        const char* key = top_up.wakes ? "plan.wake-fire" : "plan.fire";
        all.push_back({top_up.light_fire,
                       {on("top-up-fire", nth), writer.words.text(key, {{"litres", on("top-up-boil", nth)}})}});
    }
}

void add_settled(const CardWriter& writer, const CardFigures& on, TimedSteps& all) {
    if (tells_settled(writer)) {
        const words::Words& w = writer.words;
        // What may be read as expected and yet asks for the fire is said here as Reading says it.
        Text text = on.has("settled-least") ? w.text("plan.settled-least", {{"low", on("settled-low")},
                                                                            {"high", on("settled-high")},
                                                                            {"least", on("settled-least")},
                                                                            {"reading", writer.ref("reading")}})
                                            : w.text("plan.settled", {{"low", on("settled-low")},
                                                                      {"high", on("settled-high")},
                                                                      {"floor", on.brief("read-floor")},
                                                                      {"reading", writer.ref("reading")}});
        all.push_back({plan::settled_at(writer.plan), {on("settled-at"), std::move(text)}});
    }
}

void add_sides(const CardWriter& writer, const CardFigures& on, TimedSteps& all) {
    const words::Words& w = writer.words;
    const plan::Sides& sides = writer.plan.around.sides;
    for (std::size_t i = 0; i < sides.list.size(); ++i) {
        const Which which = side_place(sides, i);
        all.push_back(
            {on.moment("side", which),
             {on("side", which), w.text("plan.side", {{"side", plain(sides.list[i].name)},
                                                      {"takes", on("side-takes", static_cast<int>(i) + 1)}})}});
    }
    for (int nth = 1; nth <= static_cast<int>(sides.clashes.size()); ++nth) {
        all.push_back({on.moment("clash-from", nth),
                       {on("clash-from", nth), w.text("plan.clash", {{"until", on.brief("clash-until", nth)}})}});
    }
}

void add_late(const CardWriter& writer, const CardFigures& on, TimedSteps& all) {
    if (on.has("late-asked")) {  // else no meal is served from this box
        all.insert(all.begin(), {on.moment("late-asked"), {on("late-asked"), late_text(writer, on)}});
    }
}

/// The pan must be hot for the first piece of the nth meal.
void add_pan(const CardWriter& writer, const CardFigures& on, const plan::Sear& sear, units::LocalTime meal, int nth,
             TimedSteps& all) {
    if (const auto fire = pan_fire(writer.plan, sear, meal)) {
        all.push_back({on.moment("pan-fire", nth),
                       {on("pan-fire", nth), writer.words.text(fire->apart ? "plan.pan-apart" : "plan.pan")}});
    }
}

/// Whether an event has a line of its own: of the rounds of the fill the first has.
/// What waits for the fire is ready by that, and not before.
bool has_line(const CardWriter& writer, const Event& event, bool& poured) {
    if (event.kind == Event::Kind::ready) {
        return !writer.plan.foods[event.index].standard.finish;
    }
    if (event.kind != Event::Kind::pour) {
        return true;
    }
    return worth_a_line(writer.plan.fill.pours[event.index]) && !std::exchange(poured, true);
}

}  // namespace

Text late_text(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const bool waits = plan.waits_until > plan.trip->serve;
    if (!writer.reads()) {
        return waits ? w.text(plan.top_ups.empty() ? "plan.wait-shut" : "plan.wait-clock",
                              {{"until", on.brief("waits-until")}})
                     : w.text("plan.late-clock");
    }
    return waits ? w.text("plan.wait", {{"until", on.brief("waits-until")},
                                        {"least", on("waits-if")},
                                        {"serve", on.brief("act", act_at(plan, plan.trip->serve))},
                                        {"reading", writer.ref("reading")},
                                        {"late", on.brief("late-until")}})
                 : w.text("plan.late", {{"serve", on.brief("act", act_at(plan, plan.trip->serve))},
                                        {"reading", writer.ref("reading")},
                                        {"until", on.brief("late-until")}});
}

Text latest_text(const CardWriter& writer, const CardFigures& on) {
    const plan::Fill& fill = writer.plan.fill;
    return fill.latest_fire > fill.light_fire ? writer.words.text("plan.latest", {{"at", on("latest-fire")}})
                                              : writer.words.text("plan.latest-now");
}

Text rounds_text(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    Text rounds;
    int event = 0;
    for (const Event& one : plan.events) {
        ++event;
        if (one.kind != Event::Kind::pour || !worth_a_line(plan.fill.pours[one.index])) {
            continue;
        }
        const Text& litres = on("pour", static_cast<int>(one.index) + 1);
        rounds += rounds.empty()
                      ? litres
                      : writer.words.text("plan.round", {{"at", on.brief("act", event)}, {"litres", litres}});
    }
    return rounds;
}

bool tells_settled(const CardWriter& writer) {
    return plan::tells_settled(writer.plan);
}

Steps timeline_of(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const CardFigures on = writer.on("plan");
    std::vector<TimedStep> all;
    bool poured = false;
    for (std::size_t i = 0; i < plan.events.size(); ++i) {
        if (has_line(writer, plan.events[i], poured)) {
            all.push_back({plan.events[i].at, step_of(writer, on, static_cast<int>(i) + 1)});
        }
    }
    add_fires(writer, on, all);
    add_settled(writer, on, all);
    add_sides(writer, on, all);
    int nth = 0;
    const auto add_sear = [&](const plan::Sear& sear, units::LocalTime meal) {
        ++nth;
        add_pan(writer, on, sear, meal, nth, all);
        if (auto step = sear_step(writer, on, meal, nth)) {
            all.push_back(std::move(*step));
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(meal.sear, meal.serve);
    }
    add_sear(plan.around.sear, plan.trip->serve);
    add_late(writer, on, all);
    std::stable_sort(all.begin(), all.end(), [](const TimedStep& a, const TimedStep& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (TimedStep& timed : all) {
        steps.steps.push_back(std::move(timed.step));
    }
    return steps;
}

}  // namespace holdwater::card
