// SPDX-License-Identifier: MIT
#include "plan/result/last_chance.hpp"

#include "plan/result/summary.hpp"
#include "trip/trip.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::plan {
namespace {

using units::Duration;

constexpr Duration later_step = units::minutes(15);

/// What is left at the most between each food's ready time, or its own time to go in, and the one that it must keep.
Duration most_later(const Plan& plan) {
    Duration most = plan.trip->serve.since(plan.fill.food_in);
    for (const FoodPlan& food : plan.foods) {
        if (food.in > plan.fill.food_in) {  // its own time, until which the bath only has to be there
            most = std::min(most, food.in.since(plan.fill.food_in));
        } else if (!food.standard.kept_hot) {  // what is kept hot waits over the fire until then
            most = std::min(most, food.ready_late ? food.leaves().since(*food.ready_late) : Duration{0});
        }
    }
    return most;
}

/// True if the schedule, begun so much later, keeps its promises in one set of so many scenarios, with all food ready
/// in time.
bool holds_later(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan, Duration later,
                 std::size_t points) {
    trip::Trip moved = *plan.trip;
    moved.from = plan.trip->from.after(later);
    const auto setup = set_up(moved);
    if (!setup) {
        return false;
    }
    const Ensemble then(*setup, {points, 1});
    const std::vector<ScenarioResult> results = simulate(then, schedule);
    if (!holds_in(then, results)) {
        return false;
    }
    for (std::size_t i = 0; i < plan.foods.size(); ++i) {
        if (plan.foods[i].standard.kept_hot) {
            continue;
        }
        const FoodPlan food = food_plan(then, results, i);
        if (!food.ready_late || *food.ready_late > plan.foods[i].leaves()) {
            return false;
        }
    }
    return true;
}

}  // namespace

units::LocalTime latest_food_in(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan,
                                Duration at_most) {
    const double most = std::floor(std::min(most_later(plan), at_most).si() / later_step.si());
    const auto holds_in_part = [&](double quarters, std::size_t part) {
        return holds_later(ensemble, schedule, plan, later_step * quarters,
                           std::max<std::size_t>(1, ensemble.points() / part));
    };
    const auto holds = [&](double quarters) { return holds_in_part(quarters, 1); };
    double good = 0.0;
    if (most > 0.0 && holds(most)) {
        good = most;
    } else {
        for (double bad = most; bad - good > 1.0;) {
            const double middle = std::floor((good + bad) / 2.0);
            (holds(middle) ? good : bad) = middle;
        }
    }
    // A little later may fail where more holds again: the air turns, a pour falls into a colder hour. Whoever is late
    // by less keeps to the same card, so that all on the way must hold. What fails in a part of the scenarios is looked
    // at in all of them.
    for (double quarters = 1.0; quarters < good; quarters += 1.0) {
        if (!holds_in_part(quarters, 4) && !holds(quarters)) {
            good = quarters - 1.0;
        }
    }
    return plan.fill.food_in.after(later_step * good);
}

}  // namespace holdwater::plan
