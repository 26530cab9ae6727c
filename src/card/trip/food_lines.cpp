// SPDX-License-Identifier: MIT
#include "card/trip/food_lines.hpp"

#include "card/figures/places.hpp"
#include "card/shared/shared_parts.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::card {
namespace {

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
    return writer.words.text("plan.core-line",
                             {{"target", on("target", nth)}, {"peak", on("core-peak", food_place(writer.plan, food))}});
}

/// True if it turns out other than the trip wished.
bool is_bent(const plan::Plan& plan, const plan::FoodPlan& food) {
    return std::any_of(plan.bent.begin(), plan.bent.end(),
                       [&food](const plan::BentWish& wish) { return wish.food == food.food->name; });
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

std::vector<Note> food_lines(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    // What is the same for all stands once, behind them.
    std::vector<Text> advice;
    for (std::size_t i = 0; i < writer.plan.foods.size(); ++i) {
        if (writer.plan.foods[i].standard.below_consumer_advice) {
            advice.push_back(advice_line(writer, on, writer.plan.foods[i], static_cast<int>(i) + 1));
        }
    }
    const bool once = advice.size() > 1 && advice.size() == writer.plan.foods.size() &&
                      std::all_of(advice.begin(), advice.end(), [&](const Text& one) { return one == advice[0]; });
    std::vector<Note> notes;
    int nth = 0;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        ++nth;
        Text line = "*" +
                    w.text("plan.food-line", {{"pieces", on.count("pieces", nth)},
                                              {"food", plain(food.food->name)},
                                              {"thickness", on("thickness", nth)}}) +
                    "* " + core_line(writer, on, food, nth);
        if (is_bent(writer.plan, food)) {
            line += " " + w.text("plan.bent-line");
        }
        if (food.waits_for_growth() || food.finished_for_growth) {
            line += " " + w.text(food.finished_for_growth ? "plan.growth-finish-line" : "plan.growth-line");
        }
        if (food.standard.below_consumer_advice && !once) {
            line += " " + advice_line(writer, on, food, nth);
        }
        notes.push_back({std::move(line)});
    }
    if (once) {
        notes.push_back({advice[0]});
    }
    return notes;
}

}  // namespace holdwater::card
