// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "card/cards.hpp"
#include "plan/sleep_window.hpp"
#include "units/print.hpp"

namespace holdwater::card {
namespace {

using plan::Event;
using units::Toward;

std::string reading_text(const Hand& hand) { return hand.about(hand.plan.fill.reading); }

Step step_of(const Hand& hand, const Event& event) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    const std::string when = hand.clock(event.at);
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    switch (event.kind) {
        case Event::Kind::light_fire:
            return {when, w.text("plan.light-fire", {{"cold", hand.litres_short(plan.fill.cold)}, {"litres", hand.litres_short(plan.fill.boiled, Toward::up)}})};
        case Event::Kind::pour: {
            const plan::Pour& pour = plan.fill.pours[event.index];
            if (event.index + 1 == plan.fill.pours.size()) {
                return {when, reads ? w.text("plan.pour-last", {{"reading", reading_text(hand)}})
                                    : w.text("plan.pour-last-measured", {{"litres", hand.litres_short(pour.boiling)}})};
            }
            return {when, w.text("plan.pour", {{"litres", hand.litres_short(pour.boiling)}})};
        }
        case Event::Kind::food_in:
            return {when, w.text("plan.food-in")};
        case Event::Kind::top_up: {
            const plan::TopUp& top_up = plan.top_ups[event.index];
            return {when, w.text(top_up.wakes ? "plan.top-up-wake" : "plan.top-up",
                                 {{"wake", hand.clock_only(top_up.light_fire)},
                                  {"litres", hand.litres_short(top_up.boiling, Toward::up)}})};
        }
        case Event::Kind::ready: {
            const plan::FoodPlan& food = plan.foods[event.index];
            return {when, w.text("plan.ready", {{"food", food.food->name}})};
        }
        case Event::Kind::serve:
            return {when, w.text("plan.serve")};
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
    around_sleep(DayBar::Kind::hold, std::min(hour(ready), bar.to), bar.to, "plan.bar-hold");
    bar.marks.push_back({hour(plan.fill.food_in), hand.clock_only(plan.fill.food_in), hand.words.text("plan.bar-in")});
    for (const plan::TopUp& top_up : plan.top_ups) {
        bar.marks.push_back({hour(top_up.at), hand.clock_only(top_up.at), ""});
    }
    bar.marks.push_back({bar.to, hand.clock_only(plan.trip->serve), hand.words.text("plan.bar-eat")});
    return bar;
}

/// "Fri, " where the trip runs over more than one day.
std::string day_of(const Hand& hand, units::LocalTime t) {
    const std::string with_day = hand.clock(t);
    const std::string bare = hand.clock_only(t);
    return with_day == bare ? "" : with_day.substr(0, with_day.find("\u00A0")) + ", ";
}

Steps timeline_of(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    Steps steps;
    steps.numbered = false;
    for (const Event& event : plan.events) {
        if (event.kind == Event::Kind::serve) {
            for (const plan::FoodPlan& food : plan.foods) {
                if (food.standard.finish) {
                    steps.steps.push_back({hand.clock(event.at),
                                           hand.words.text("plan.finish", {{"core", hand.at_least(food.standard.finish->core)}})});
                }
            }
        }
        steps.steps.push_back(step_of(hand, event));
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

}  // namespace

Card plan_card(const Hand& hand) {
    const plan::Plan& plan = hand.plan;
    const words::Words& w = hand.words;
    Card card;
    card.blocks.emplace_back(
        KeyNumber{w.text("plan.key-label"), hand.clock_only(plan.fill.food_in), "",
                  w.text("plan.key-aside", {{"day", day_of(hand, plan.fill.food_in)}, {"latest", hand.clock(plan.fill.latest_fire)}})});
    card.blocks.emplace_back(bar_of(hand));
    for (const plan::FoodPlan& food : plan.foods) {
        card.blocks.emplace_back(Heading{
            w.text("plan.food-line", {{"pieces", fmt::format("{}", food.food->pieces)},
                                      {"food", food.food->name},
                                      {"thickness", units::print(food.food->thickness, hand.system())}})});
        const double margin = std::floor(food.kill.low * 10.0) / 10.0;
        card.blocks.emplace_back(
            Note{w.text("plan.core-line", {{"target", hand.about(food.food->target)},
                                           {"peak", hand.at_least(units::celsius(food.core_peak.high))},
                                           {"margin", margin > 20 ? "over 20" : units::number(margin, 1)}})});
        if (food.standard.below_consumer_advice) {
            card.blocks.emplace_back(Note{w.text("plan.advice-line", {{"target", hand.about(food.food->target)},
                                                                      {"core", hand.about(food.standard.consumer_core)}})});
        }
    }
    card.blocks.emplace_back(Note{"*" + contact_line(hand) + "*"});
    card.blocks.emplace_back(Turn{});
    card.blocks.emplace_back(timeline_of(hand));
    card.cautions.push_back({SignalWord::warning, w.text("plan.caution", {{"floor", hand.at_least(plan.read_floor)}})});
    return card;
}

}  // namespace holdwater::card
