// SPDX-License-Identifier: MIT
#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"
#include "card/trip/acts.hpp"
#include "card/trip/cards.hpp"
#include "card/trip/plan_timeline.hpp"
#include "plan/search/sleep_window.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

DayBar bar_of(const CardWriter& writer, const CardFigures& on) {
    const plan::Plan& plan = writer.plan;
    const auto hour = [&](units::LocalTime t) {
        return static_cast<double>(plan.trip->from.second_of_day()) / 3600.0 +
               units::in_hours(t.since(plan.trip->from));
    };
    DayBar bar;
    bar.from = hour(plan.fill.light_fire);
    bar.to = hour(plan.trip->serve);
    units::LocalTime ready = plan.fill.food_in;
    const plan::FoodPlan* warmest = nullptr;  // the one that asks for the warmest bath; none: all was cooked before
    for (const plan::FoodPlan& food : plan.foods) {
        if (food.standard.kept_hot) {
            continue;
        }
        ready = std::max(ready, food.ready());
        warmest = warmest == nullptr || food.ready_if > warmest->ready_if ? &food : warmest;
    }
    const double in = hour(plan.fill.food_in);
    bar.spans.push_back({DayBar::Kind::fill, bar.from, in, writer.words.text("plan.bar-fill")});
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
                bar.spans.push_back({kind, begin, end, writer.words.text(label)});
            }
        }
    };
    around_sleep(DayBar::Kind::cook, in, std::min(hour(ready), bar.to), "plan.bar-cook");
    if (sleep_to > sleep_from) {
        bar.spans.push_back({DayBar::Kind::sleep, sleep_from, sleep_to, writer.words.text("plan.bar-sleep")});
    }
    around_sleep(DayBar::Kind::hold, std::min(hour(ready), bar.to), bar.to,
                 writer.any_finish() ? "plan.bar-wait" : "plan.bar-hold");
    const auto mark = [&](units::LocalTime at, Text above) {
        bar.marks.push_back({hour(at), on.brief("act", act_at(plan, at)), std::move(above)});
    };
    mark(plan.fill.food_in, writer.words.text("plan.bar-in"));
    for (const plan::TopUp& top_up : plan.top_ups) {
        mark(top_up.at, "");
    }
    if (warmest != nullptr && !writer.any_finish() && hour(ready) < bar.to) {
        const Text ready_mark =
            writer.reads()
                ? writer.words.text("plan.bar-ready", {{"least", on("ready-if", food_place(plan, *warmest))}})
                : writer.words.text("plan.bar-hold");
        mark(ready, ready_mark);
    }
    mark(plan.trip->serve, writer.words.text("plan.bar-eat"));
    return bar;
}

std::string contact_line(const CardWriter& writer) {
    switch (writer.plan.foods.front().food->contact) {
        case facts::Contact::free:
            return writer.words.text("plan.contact-free");
        case facts::Contact::bottom:
            return writer.words.text("plan.contact-bottom");
        case facts::Contact::stacked:
            return writer.words.text("plan.contact-stacked");
    }
    return {};
}

/// The published rows that a kill standard stands for; the key of a word has no dot in it.
std::string rows_text(const CardWriter& writer, const plan::FoodPlan& food) {
    std::string key = food.standard.kill->key;
    std::replace(key.begin(), key.end(), '.', '-');
    return writer.words.text("plan.rows-" + key);
}

/// What the bath does to the core of the nth food. A food that still needs the fire gets no word of safety.
std::string core_line(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food, int nth) {
    if (food.standard.finish) {
        return writer.words.text("plan.core-line-finish", {{"target", on("target", nth)},
                                                           {"core", on("finish", nth)},
                                                           {"hold", for_hold(writer, on, "finish-hold", nth)}});
    }
    if (food.standard.kept_hot) {
        return writer.words.text("plan.keep-hot-line",
                                 {{"start", on("goes-in", nth)}, {"floor", on("hot-floor", nth)}});
    }
    if (food.standard.sear) {
        return writer.words.text("plan.steak-line", {{"target", on("target", nth)},
                                                     {"peak", on("core-peak", food_place(writer.plan, food))}});
    }
    constexpr int many = 20;  // times the kill that is asked: how many more says nothing
    const Which name = food_place(writer.plan, food);
    const bool over = on.look_at("kill-margin", name).amount.value().value.value > many;
    return writer.words.text(
        "plan.core-line",
        {{"target", on("target", nth)},
         {"peak", on("core-peak", name)},
         {"margin", over ? writer.words.text("plan.margin-over", {{"times", many}}) : on("kill-margin", name)}});
}

/// True if it turns out other than the trip wished.
bool is_bent(const plan::Plan& plan, const plan::FoodPlan& food) {
    return std::any_of(plan.bent.begin(), plan.bent.end(),
                       [&food](const plan::BentWish& wish) { return wish.food == food.food->name; });
}

/// Until when the meal may wait, and when that holds.
Text wait_line(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    if (!writer.reads()) {
        return w.text(writer.plan.top_ups.empty() ? "plan.wait-shut" : "plan.wait-clock",
                      {{"until", on("waits-until")}});
    }
    const Text& serve = on.brief("act", act_at(writer.plan, writer.plan.trip->serve));
    return w.text("plan.wait", {{"until", on("waits-until")}, {"least", on("waits-if")}, {"serve", serve}});
}

}  // namespace

Text advice_line(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food, int nth,
                 const std::string& key) {
    const words::Words& w = writer.words;
    const std::string rules{facts::to_name(writer.plan.trip->rules)};
    return w.text(key, {{"rows", rows_text(writer, food)},
                        {"whose", w.text("plan.whose-" + rules)},
                        {"core", on("advice", nth)},
                        {"hold", for_hold(writer, on, "advice-hold", nth)}});
}

Card plan_card(const CardWriter& writer) {
    const plan::Plan& plan = writer.plan;
    const words::Words& w = writer.words;
    const CardFigures on = writer.on("plan");
    Card card;
    card.blocks.add(KeyNumber{w.text("plan.key-label"), on.brief("act", act_at(plan, plan.fill.food_in)), "",
                              w.text("plan.key-aside", {{"fire", on("act", act_at(plan, plan.fill.light_fire))},
                                                        {"latest", on("latest-fire")}})});
    card.blocks.add(bar_of(writer, on));
    int nth = 0;
    for (const plan::FoodPlan& food : plan.foods) {
        ++nth;
        card.blocks.add(Heading{w.text("plan.food-line", {{"pieces", on.count("pieces", nth)},
                                                          {"food", plain(food.food->name)},
                                                          {"thickness", on("thickness", nth)}})});
        card.blocks.add(Note{core_line(writer, on, food, nth)});
        if (is_bent(plan, food)) {
            card.blocks.add(Note{w.text("plan.bent-line")});
        }
        if (food.waits_for_growth() || food.finished_for_growth) {
            card.blocks.add(Note{w.text(food.finished_for_growth ? "plan.growth-finish-line" : "plan.growth-line")});
        }
        if (food.standard.below_consumer_advice) {
            card.blocks.add(Note{advice_line(writer, on, food, nth)});
        }
    }
    card.blocks.add(Note{"*" + contact_line(writer) + "*"});
    card.blocks.add(Turn{});
    const std::string wait = plan.waits_until > plan.trip->serve
                                 ? wait_line(writer, on)
                                 : w.text("plan.wait-not", {{"serve", on("act", act_at(plan, plan.trip->serve))}});
    card.blocks.add(Note{writer.reads() ? wait + " " + w.text("plan.late") : wait});
    card.blocks.add(timeline_of(writer));
    card.warn(writer.reads()
                  ? w.text("plan.caution", {{"floor", on("read-floor")}})
                  : w.text(writer.wax() ? "plan.caution-clock-wax" : "plan.caution-clock", {{"late", on("late")}}));
    return card;
}

}  // namespace holdwater::card
