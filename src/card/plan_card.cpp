// SPDX-License-Identifier: MIT
#include "card/cards.hpp"
#include "card/kitchen.hpp"
#include "card/shared_parts.hpp"
#include "plan/sleep_window.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace holdwater::card {
namespace {

using plan::Event;
using units::Toward;

struct Timed {
    units::LocalTime at;
    Step step;
};

std::string reading_text(const Hand& hand) {
    return hand.about(hand.plan.fill.reading);
}

/// When the first piece of a meal comes out for the pan; nothing where none of this box is seared for it.
std::optional<Timed> sear_step(const Hand& hand, const plan::Sear& sear, units::LocalTime meal) {
    std::string names;
    for (const plan::FoodPlan& food : hand.plan.foods) {
        if (!food.standard.finish && food.eaten == meal) {
            names += (names.empty() ? "" : ", ") + food.food->name;
        }
    }
    if (names.empty()) {
        return std::nullopt;
    }
    const units::LocalTime out = first_piece_out(hand.plan, sear, meal);
    const char* key = hand.plan.foods.size() > 1 ? "plan.sear-of" : "plan.sear";
    return Timed{out, {hand.clock(out), hand.words.text(key, {{"food", names},
                                                              {"side", fmt::format("{:.0f}", sear.side.si())}})}};
}

/// A food that comes out before the trip's serving.
Step take_out(const Hand& hand, const plan::FoodPlan& food) {
    const words::Words& w = hand.words;
    if (!food.standard.finish) {
        return {hand.clock(food.eaten), w.text("plan.take-out", {{"food", food.food->name}})};
    }
    return {hand.clock(food.eaten), w.text("plan.take-out-finish", {{"food", food.food->name},
                                                                    {"core", hand.at_least(food.standard.finish->core)},
                                                                    {"hold", hand.for_hold(food.standard.finish->hold)}})};
}

Step step_of(const Hand& hand, const Event& event) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const std::string when = hand.clock(event.at);
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    switch (event.kind) {
        case Event::Kind::light_fire:
            if (plan.fill.warming.si() > 0.0) {
                return {when, w.text("plan.light-fire-warm",
                                     {{"litres", hand.litres_short(plan.fill.boiled + plan.fill.warming, Toward::up)}})};
            }
            return {when, w.text("plan.light-fire", {{"cold", hand.litres_short(plan.fill.cold)},
                                                     {"litres", hand.litres_short(plan.fill.boiled, Toward::up)}})};
        case Event::Kind::warm_box:
            return {when, w.text("plan.warm-box", {{"litres", hand.litres_short(plan.fill.warming, Toward::down)},
                                                  {"cold", hand.litres_short(plan.fill.cold)}})};
        case Event::Kind::pour: {
            const plan::Pour& pour = plan.fill.pours[event.index];
            if (event.index + 1 == plan.fill.pours.size()) {
                return {when, reads ? w.text("plan.pour-last", {{"reading", reading_text(hand)},
                                                                     {"litres", hand.litres_short(pour.boiling, Toward::up)}})
                                    : w.text("plan.pour-last-measured", {{"litres", hand.measured(pour.boiling)}})};
            }
            return {when, w.text("plan.pour", {{"pots", pour.pots == 1 ? w.text("plan.pots-one")
                                                                       : w.text("plan.pots", {{"count", fmt::format("{}", pour.pots)}})},
                                               {"litres", hand.measured(pour.boiling)}})};
        }
        case Event::Kind::food_in:
            return {when, plan::all_in_at_once(plan)
                              ? w.text("plan.food-in")
                              : w.text("plan.this-food-in",
                                       {{"food", plan::names_at(plan, &plan::FoodPlan::in, event.at)}})};
        case Event::Kind::take_out:
            return take_out(hand, plan.foods[event.index]);
        case Event::Kind::top_up: {
            const plan::TopUp& top_up = plan.top_ups[event.index];
            const bool swap = is_swap(top_up);
            const std::string out = !swap && worth_a_pour(top_up.out)
                                        ? w.text("plan.out-first", {{"litres", hand.litres_short(top_up.out, Toward::up)}})
                                        : "";
            const std::string key = swap ? "plan.swap" : "plan.top-up";
            return {when,
                    w.text(key + (top_up.wakes ? "-wake" : reads ? "" : "-fixed"),
                           {{"wake", hand.clock_only(top_up.light_fire)},
                            {"out", out},
                            {"litres", hand.one_boil(top_up.boiling)}})};
        }
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            return {when, w.text(food.standard.finish ? "plan.ready-raw" : "plan.ready", {{"food", food.food->name}})};
        }
        case Event::Kind::serve:
            // Who is at risk needs more than the plan gives, unless it was made for them.
            return {when, w.text(plan.trip->at_risk ? "plan.serve" : "plan.serve-risk")};
    }
    return {};
}

DayBar bar_of(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const auto hour = [&](units::LocalTime t) {
        return static_cast<double>(plan.trip->from.second_of_day()) / 3600.0 +
               units::in_hours(t.since(plan.trip->from));
    };
    DayBar bar;
    bar.from = hour(plan.fill.light_fire);
    bar.to = hour(plan.trip->serve);
    units::LocalTime ready = plan.foods.front().ready_late;
    for (const plan::FoodPlan& food : plan.foods) {
        ready = std::max(ready, food.ready_late);
    }
    const double in = hour(plan.fill.food_in);
    bar.spans.push_back({DayBar::Kind::fill, bar.from, in, hand.words.text("plan.bar-fill")});
    // Sleep lies over cooking and holding: what is left of those on both sides of it is drawn.
    double sleep_from = bar.to;
    double sleep_to = bar.to;
    if (const auto night = plan::SleepWindow(*plan.trip).night_after(units::Duration{0})) {
        sleep_from = std::clamp(hour(plan.trip->from.after(night->from)), in, bar.to);
        sleep_to = std::clamp(hour(plan.trip->from.after(night->to)), in, bar.to);
    }
    const auto around_sleep = [&](DayBar::Kind kind, double from, double to, const char* label) {
        const std::pair<double, double> parts[] = {{from, std::min(to, sleep_from)}, {std::max(from, sleep_to), to}};
        for (const auto& [begin, end] : parts) {
            if (end > begin + 1e-9) {
                bar.spans.push_back({kind, begin, end, hand.words.text(label)});
            }
        }
    };
    around_sleep(DayBar::Kind::cook, in, std::min(hour(ready), bar.to), "plan.bar-cook");
    if (sleep_to > sleep_from) {
        bar.spans.push_back({DayBar::Kind::sleep, sleep_from, sleep_to, hand.words.text("plan.bar-sleep")});
    }
    around_sleep(DayBar::Kind::hold, std::min(hour(ready), bar.to), bar.to,
                 hand.any_finish() ? "plan.bar-wait" : "plan.bar-hold");
    bar.marks.push_back({hour(plan.fill.food_in), hand.clock_only(plan.fill.food_in), hand.words.text("plan.bar-in")});
    for (const plan::TopUp& top_up : plan.top_ups) {
        bar.marks.push_back({hour(top_up.at), hand.clock_only(top_up.at), ""});
    }
    if (!hand.any_finish() && hour(ready) < bar.to) {
        bar.marks.push_back({hour(ready), hand.clock_only(ready), hand.words.text("plan.bar-hold")});
    }
    bar.marks.push_back({bar.to, hand.clock_only(plan.trip->serve), hand.words.text("plan.bar-eat")});
    return bar;
}

/// A last pot of next to nothing is no step.
bool worth_a_line(const Hand& hand, const Event& event) {
    return event.kind != Event::Kind::pour || worth_a_pour(hand.plan.fill.pours[event.index].boiling);
}

Steps timeline_of(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    std::vector<Timed> all;
    for (const Event& event : plan.events) {
        if (event.kind == Event::Kind::serve) {
            for (const plan::FoodPlan& food : plan.foods) {
                if (food.standard.finish && food.eaten == plan.trip->serve) {
                    const safety::Finish& finish = *food.standard.finish;
                    all.push_back({event.at,
                                   {hand.clock(event.at),
                                    hand.words.text("plan.finish", {{"food", food.food->name},
                                                                    {"core", hand.at_least(finish.core)},
                                                                    {"hold", hand.for_hold(finish.hold)}})}});
                }
            }
        }
        if (worth_a_line(hand, event)) {
            all.push_back({event.at, step_of(hand, event)});
        }
    }
    const auto add_sear = [&](const plan::Sear& sear, units::LocalTime meal) {
        if (auto step = sear_step(hand, sear, meal)) {
            all.push_back(std::move(*step));
        }
    };
    for (const plan::Meal& meal : plan.around.earlier) {
        add_sear(meal.sear, meal.serve);
    }
    add_sear(plan.around.sear, plan.trip->serve);
    std::stable_sort(all.begin(), all.end(), [](const Timed& a, const Timed& b) { return a.at < b.at; });
    Steps steps;
    steps.numbered = false;
    for (Timed& timed : all) {
        steps.steps.push_back(std::move(timed.step));
    }
    return steps;
}

std::string contact_line(const Hand& hand) {
    switch (hand.plan.foods.front().food->contact) {
        case facts::Contact::free:
            return hand.words.text("plan.contact-free");
        case facts::Contact::floor:
            return hand.words.text("plan.contact-floor");
        case facts::Contact::stacked:
            return hand.words.text("plan.contact-stacked");
    }
    return {};
}

/// The published rows that a kill standard stands for; the key of a word has no dot in it.
std::string rows_text(const Hand& hand, const plan::FoodPlan& food) {
    std::string key = food.standard.kill->key;
    std::replace(key.begin(), key.end(), '.', '-');
    return hand.words.text("plan.rows-" + key);
}

/// What the bath does to the core. A food that still needs the fire gets no word of safety.
std::string core_line(const Hand& hand, const plan::FoodPlan& food) {
    if (food.standard.finish) {
        return hand.words.text("plan.core-line-finish", {{"target", hand.at_least(food.food->target)},
                                                         {"core", hand.at_least(food.standard.finish->core)},
                                                         {"hold", hand.for_hold(food.standard.finish->hold)}});
    }
    const double margin = std::floor(food.kill.low * 10.0) / 10.0;
    return hand.words.text("plan.core-line", {{"target", hand.at_least(food.food->target)},
                                              {"peak", hand.at_least(units::celsius(food.core_peak.high))},
                                              {"margin", margin > 20 ? hand.words.text("plan.margin-over", {{"times", "20"}})
                                                                   : units::number(margin, 1)}});
}

}  // namespace

Text advice_line(const Hand& hand, const plan::FoodPlan& food, const std::string& key) {
    const words::Words& w = hand.words;
    const std::string rules{facts::to_name(hand.plan.trip->rules)};
    return w.text(key, {{"rows", rows_text(hand, food)},
                        {"whose", w.text("plan.whose-" + rules)},
                        {"core", hand.at_least(food.standard.consumer_core)},
                        {"hold", hand.for_hold(food.standard.consumer_hold)}});
}

Card plan_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    card.blocks.emplace_back(KeyNumber{w.text("plan.key-label"), hand.clock_only(plan.fill.food_in), "",
                                       w.text("plan.key-aside", {{"fire", hand.clock(plan.fill.light_fire)},
                                                                 {"latest", hand.clock(plan.fill.latest_fire)}})});
    card.blocks.emplace_back(bar_of(hand));
    for (const plan::FoodPlan& food : plan.foods) {
        card.blocks.emplace_back(
            Heading{w.text("plan.food-line", {{"pieces", fmt::format("{}", food.food->pieces)},
                                              {"food", food.food->name},
                                              {"thickness", hand.thickness(food.food->thickness)}})});
        card.blocks.emplace_back(Note{core_line(hand, food)});
        if (food.standard.below_consumer_advice) {
            card.blocks.emplace_back(Note{advice_line(hand, food)});
        }
    }
    card.blocks.emplace_back(Note{"*" + contact_line(hand) + "*"});
    card.blocks.emplace_back(Turn{});
    const char* waits = !hand.reads() && plan.top_ups.empty() ? "plan.wait-shut" : "plan.wait";
    const std::string wait = plan.waits_until > plan.trip->serve
                                 ? w.text(waits, {{"until", hand.clock(plan.waits_until)}})
                                 : w.text("plan.wait-not", {{"serve", hand.clock(plan.trip->serve)}});
    card.blocks.emplace_back(Note{hand.reads() ? wait + " " + w.text("plan.late") : wait});
    card.blocks.emplace_back(timeline_of(hand));
    card.cautions.push_back(
        {SignalWord::warning, hand.reads() ? w.text("plan.caution", {{"floor", hand.at_least(plan.read_floor)}})
                                           : w.text(hand.wax() ? "plan.caution-clock-wax" : "plan.caution-clock",
                                                    {{"late", hand.latest_pour()}})});
    return card;
}

}  // namespace holdwater::card
