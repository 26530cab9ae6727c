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
                                                           {"core", on.brief("finish", nth)},
                                                           {"hold", for_hold(writer, on, "finish-hold", nth)}});
    }
    if (food.standard.kept_hot) {
        return writer.words.text("plan.keep-hot-line",
                                 {{"start", on("goes-in", nth)}, {"floor", on("hot-floor", nth)}});
    }
    const Text line = writer.words.text(
        "plan.core-line", {{"target", on("target", nth)}, {"peak", on("core-peak", food_place(writer.plan, food))}});
    return food.standard.sear ? line + " " + writer.words.text("plan.steak-rule") : line;
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

Text names_at(const CardWriter& writer, units::LocalTime plan::FoodPlan::*time, units::LocalTime at) {
    Text names;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        if (food.*time == at) {
            names += (names.empty() ? "" : ", ") + name_of(writer, *food.food);
        }
    }
    return names;
}

Text ready_text(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food) {
    const words::Words& w = writer.words;
    const Text name = name_of(writer, *food.food);
    if (!writer.reads()) {
        return w.text("plan.ready-clock", {{"food", name}});
    }
    const Which which = food_place(writer.plan, food);
    const Text& least = on("ready-if", which);
    // Below that reading its table has more to say, down to the floor.
    const auto told_by_hold = [&](const Text& reading) {
        return has_bars(food) && reading != on.look_at("read-floor-level").brief;
    };
    const auto later = [&] {
        const Text& bath = on("late-bath", which);
        return w.text("plan.ready-later", {{"least", bath},
                                           {"time", on("ready-late", which)},
                                           {"card", writer.ref(told_by_hold(bath) ? "hold" : "reading")}});
    };
    const auto under = [&] {
        return told_by_hold(least) ? w.text("plan.ready-else-later", {{"card", writer.ref("hold")}})
                                   : w.text("plan.ready-else", {{"card", writer.ref("reading")}});
    };
    const Text other = on.has("ready-late", which) ? later() : under();
    return w.text("plan.ready", {{"food", name}, {"least", least}, {"else", other}});
}

std::vector<Note> advice_lines(const CardWriter& writer, const CardFigures& on) {
    std::vector<Note> notes;
    const auto& foods = writer.plan.foods;
    std::vector<Text> advice;
    for (std::size_t i = 0; i < foods.size(); ++i) {
        advice.push_back(
            foods[i].standard.below_consumer_advice ? advice_line(writer, on, foods[i], static_cast<int>(i) + 1) : "");
    }
    const bool once = std::all_of(advice.begin(), advice.end(), [&](const Text& one) { return one == advice[0]; });
    for (std::size_t i = 0; i < foods.size() && (i == 0 || !once); ++i) {
        if (!advice[i].empty()) {
            notes.push_back({once ? advice[i] : "*" + name_of(writer, *foods[i].food) + "*: " + advice[i]});
        }
    }
    return notes;
}

std::vector<Note> hot_lines(const CardWriter& writer, const CardFigures& on) {
    std::vector<Note> notes;
    int nth = 0;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        ++nth;
        if (food.standard.kept_hot) {
            notes.push_back({"*" + name_of(writer, *food.food) + "*: " + core_line(writer, on, food, nth)});
        }
    }
    return notes;
}

std::vector<Note> food_lines(const CardWriter& writer, const CardFigures& on) {
    const words::Words& w = writer.words;
    std::vector<Note> notes;
    int nth = 0;
    for (const plan::FoodPlan& food : writer.plan.foods) {
        ++nth;
        Text line = "*" +
                    w.text("plan.food-line", {{"pieces", on.count("pieces", nth)},
                                              {"food", name_of(writer, *food.food)},
                                              {"thickness", on("thickness", nth)}}) +
                    "* " + core_line(writer, on, food, nth);
        if (food.waits_for_growth() || food.finished_for_growth) {
            line += " " + w.text(food.finished_for_growth ? "plan.growth-finish-line" : "plan.growth-line");
        }
        notes.push_back({std::move(line)});
    }
    return notes;
}

}  // namespace holdwater::card
