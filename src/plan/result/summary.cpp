// SPDX-License-Identifier: MIT
#include "plan/result/summary.hpp"

#include "plan/result/hold_table.hpp"
#include "safety/growth.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
using units::Duration;

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
    const Interval<std::optional<Duration>> when = interval(&FoodResult::ready);
    if (when.likely) {
        plan.ready_likely = setup.trip->from.after(*when.likely);
    }
    if (when.high) {
        plan.ready_late = setup.trip->from.after(*when.high);
    }
    // Readings under what the plan looks for in 95 of 100 scenarios tell that this is another box or another day.
    plan.ready_if = interval(&FoodResult::coolest).low;
    plan.core_peak = interval(&FoodResult::peak);
    if (!food.standard.finish && plan.core_peak.low < food.standard.consumer_core) {
        plan.standard.below_consumer_advice = true;  // it may stay under what it aims at
    }
    plan.kill = interval(&FoodResult::kill);
    plan.come_up = interval(&FoodResult::come_up);
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

units::LocalTime latest_food_in(const Plan& plan) {
    Duration slack = plan.trip->serve.since(plan.fill.food_in);
    for (const FoodPlan& food : plan.foods) {
        if (food.in > plan.fill.food_in) {  // its own time, until which the bath only has to be there
            slack = std::min(slack, food.in.since(plan.fill.food_in));
            continue;
        }
        slack = std::min(slack, food.ready_late ? food.eaten.since(*food.ready_late) : Duration{0});
        // Later food meets other top-ups: the hold time in a bath that is never topped up too late must fit as well.
        if (const auto hold = safe_hold(plan, food, food.food->thickness, plan.action_line)) {
            const Duration by_hold = food.eaten.since(plan.fill.food_in) - *hold;
            slack = std::min(slack, std::max(by_hold, Duration{0}));
        }
    }
    return plan.fill.food_in.after(Duration{std::floor(slack.si() / 900.0) * 900.0});
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
