// SPDX-License-Identifier: MIT
#include "plan/result/summary.hpp"

#include "plan/result/hold_table.hpp"
#include "plan/result/judged_warming.hpp"
#include "safety/clocks.hpp"
#include "safety/finish.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
using units::Duration;

namespace {

/// Done in time, but what grew in it while it warmed is not dead by then: the fire is to kill it, where that can be:
/// somebody can measure the core, and the piece warms quickly enough to be finished at all.
bool must_be_finished_for_growth(const Setup& setup, const FoodPlan& food) {
    const auto in_time = [&food](const std::optional<units::LocalTime>& when) {
        return when && *when <= food.leaves();
    };
    if (food.standard.finish || in_time(food.ready_late) || !in_time(food.done_late) || !setup.box->thermometer ||
        safety::judge_come_up(food.come_up.high) != safety::ComeUpVerdict::fine) {
        return false;
    }
    FoodPlan finished = food;
    finished.standard.finish = safety::finish_after_growth(setup.trip->rules);
    const auto time = finish_time_of(setup, finished);
    return time && *food.done_late <= food.due.after(-time->longest());
}

}  // namespace

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<ScenarioResult>& results, std::size_t index) {
    const Setup& setup = ensemble.setup();
    const FoodSetup& food = setup.foods[index];
    const auto interval = [&]<class Q>(Q FoodResult::*member) {
        std::vector<Q> values;
        values.reserve(results.size());
        for (const ScenarioResult& one : results) {
            values.push_back(one.foods[index].*member);
        }
        return ensemble.interval(values);
    };
    FoodPlan plan;
    plan.food = food.food;
    plan.piece = food.piece;
    plan.standard = food.standard;
    std::vector<Duration> in;
    for (const ScenarioResult& one : results) {
        in.push_back(std::max(one.food_in, food.in.value_or(one.food_in)));
    }
    plan.in = setup.trip->from.after(ensemble.interval(in).likely);
    plan.eaten = trip::eaten(*food.food, *setup.trip);
    plan.due = trip::first_eaten(*food.food, *setup.trip);
    plan.for_the_pan = is_seared(plan) ? plan.due.after(-sear_takes(setup, *food.food)) : plan.due;
    if (const facts::FoodKind* kind = facts::facts().find_food(food.food->kind)) {
        plan.longest_for_texture = facts::facts().longest_for_texture(*kind);
    }
    const auto moment = [&](const std::optional<Duration>& since) {
        return since ? std::optional(setup.trip->from.after(*since)) : std::nullopt;
    };
    const Interval<std::optional<Duration>> done = interval(&FoodResult::done);
    const Interval<std::optional<Duration>> ready = interval(&FoodResult::ready);
    plan.done_late = moment(done.high);
    plan.ready_likely = moment(ready.likely);
    plan.ready_late = moment(ready.high);
    plan.growth_left = interval(&FoodResult::growth_left);
    plan.growth_waits = plan.ready_late && plan.done_late && *plan.ready_late > *plan.done_late;
    plan.come_up = interval(&FoodResult::come_up);
    if (must_be_finished_for_growth(setup, plan)) {
        plan.standard.finish = safety::finish_after_growth(setup.trip->rules);
        plan.finished_for_growth = true;
        plan.ready_likely = moment(done.likely);
        plan.ready_late = plan.done_late;
    }
    // Readings under what the plan looks for in 95 of 100 scenarios tell that this is another box or another day.
    plan.coolest = interval(&FoodResult::coolest);
    plan.ready_if = plan.coolest.low;
    plan.core_peak = interval(&FoodResult::peak);
    if (!plan.standard.finish && plan.core_peak.low < food.standard.consumer_core) {
        plan.standard.below_consumer_advice = true;  // it may stay under what it aims at
    }
    plan.kill = interval(&FoodResult::kill);
    plan.growth_with_lag = interval(&FoodResult::growth_with_lag);
    plan.growth_without_lag = interval(&FoodResult::growth_without_lag);
    return plan;
}

std::vector<const FoodPlan*> foods_at(const Plan& plan, units::LocalTime FoodPlan::*time, units::LocalTime at) {
    std::vector<const FoodPlan*> foods;
    for (const FoodPlan& food : plan.foods) {
        if (food.*time == at) {
            foods.push_back(&food);
        }
    }
    return foods;
}

std::string names_at(const Plan& plan, units::LocalTime FoodPlan::*time, units::LocalTime at) {
    std::string names;
    for (const FoodPlan* food : foods_at(plan, time, at)) {
        names += (names.empty() ? "" : ", ") + food->food->name;
    }
    return names;
}

bool all_in_at_once(const Plan& plan) {
    return foods_at(plan, &FoodPlan::in, plan.foods.front().in).size() == plan.foods.size();
}

safety::FallRules fall_rules(const Setup& setup) {
    return safety::fall_rules(setup.trip->rules, setup.trip->at_risk);
}

std::vector<const facts::GrowthModel*> growth_models(const Setup& setup) {
    const facts::Facts& facts = facts::facts();
    std::vector<const facts::GrowthModel*> models;
    for (const FoodSetup& food : setup.foods) {
        models.push_back(&facts.growth(facts.find_food(food.food->kind)->growth));
    }
    return models;
}

std::vector<safety::ColdBath> cold_baths(const Setup& setup) {
    return safety::cold_baths(fall_rules(setup), growth_models(setup));
}

}  // namespace holdwater::plan
