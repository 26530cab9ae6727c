// SPDX-License-Identifier: MIT
#include "card/trip/cards.hpp"
#include "card/trip/plan_timeline.hpp"
#include "card/shared/shared_parts.hpp"
#include "plan/search/sleep_window.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::card {
namespace {

using units::Toward;

DayBar bar_of(const CardWriter& hand) {
    const plan::Plan& plan = hand.plan;
    const auto hour = [&](units::LocalTime t) {
        return static_cast<double>(plan.trip->from.second_of_day()) / 3600.0 +
               units::in_hours(t.since(plan.trip->from));
    };
    DayBar bar;
    bar.from = hour(plan.fill.light_fire);
    bar.to = hour(plan.trip->serve);
    units::LocalTime ready = plan.foods.front().ready();
    for (const plan::FoodPlan& food : plan.foods) {
        ready = std::max(ready, food.ready());
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

std::string contact_line(const CardWriter& hand) {
    switch (hand.plan.foods.front().food->contact) {
        case facts::Contact::free:
            return hand.words.text("plan.contact-free");
        case facts::Contact::bottom:
            return hand.words.text("plan.contact-bottom");
        case facts::Contact::stacked:
            return hand.words.text("plan.contact-stacked");
    }
    return {};
}

/// The published rows that a kill standard stands for; the key of a word has no dot in it.
std::string rows_text(const CardWriter& hand, const plan::FoodPlan& food) {
    std::string key = food.standard.kill->key;
    std::replace(key.begin(), key.end(), '.', '-');
    return hand.words.text("plan.rows-" + key);
}

/// What the bath does to the core. A food that still needs the fire gets no word of safety.
std::string core_line(const CardWriter& hand, const plan::FoodPlan& food) {
    if (food.standard.finish) {
        return hand.words.text("plan.core-line-finish", {{"target", hand.at_least(food.food->target)},
                                                         {"core", hand.at_least(food.standard.finish->core)},
                                                         {"hold", hand.for_hold(food.standard.finish->hold)}});
    }
    const double margin = std::floor(food.kill.low * 10.0) / 10.0;
    return hand.words.text("plan.core-line", {{"target", hand.at_least(food.food->target)},
                                              {"peak", hand.at_least(food.core_peak.high)},
                                              {"margin", margin > 20 ? hand.words.text("plan.margin-over", {{"times", "20"}})
                                                                   : units::number(margin, 1)}});
}

}  // namespace

Text advice_line(const CardWriter& hand, const plan::FoodPlan& food, const std::string& key) {
    const words::Words& w = hand.words;
    const std::string rules{facts::to_name(hand.plan.trip->rules)};
    return w.text(key, {{"rows", rows_text(hand, food)},
                        {"whose", w.text("plan.whose-" + rules)},
                        {"core", hand.at_least(food.standard.consumer_core)},
                        {"hold", hand.for_hold(food.standard.consumer_hold)}});
}

Card plan_card(const CardWriter& hand) {
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
                                              {"food", plain(food.food->name)},
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
