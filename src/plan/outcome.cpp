// SPDX-License-Identifier: MIT
#include "plan/outcome.hpp"

#include <algorithm>
#include <cmath>

#include "plan/hold_table.hpp"
#include "safety/clocks.hpp"
#include "safety/kill.hpp"

namespace holdwater::plan {
namespace {

using units::Duration;

/// A moment that never comes within the trip, so that quantiles push past serving.
constexpr double never = 1e9;

units::History until(const units::History& whole, Duration end) {
    units::History part;
    for (const units::History::Point& p : whole.points) {
        if (p.at <= end) {
            part.points.push_back(p);
        }
    }
    return part;
}

}  // namespace

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<Run>& lived, std::size_t index) {
    const Setup& setup = ensemble.setup();
    const FoodSetup& food = setup.foods[index];
    const Duration serving = setup.trip->serve.since(setup.trip->from);
    const facts::GrowthModel& growth =
        facts::facts().growth(facts::facts().find_food(food.food->kind)->growth);
    std::vector<double> ready, peak, kill, come_up, lag, no_lag;
    for (const Run& run : lived) {
        const units::History& core = run.bath().core_history(index);
        const answer::Safe safe = answer::judge_core(core, food.standard);
        const auto warm = core.first_at_or_above(food.food->target - units::kelvins(1), run.food_in());
        ready.push_back(safe.safe && warm ? std::max(safe.safe->si(), warm->si()) : never);
        peak.push_back(core.highest().celsius());
        kill.push_back(safety::kill_fraction(*food.standard.kill, until(core, serving)) /
                       safety::adaptation_factor(safe.come_up));
        come_up.push_back(safe.come_up ? safe.come_up->si() : never);
        const auto arrives = core.first_at_or_above(units::celsius(facts::facts().value("come-up.to")), run.food_in());
        const units::History rise = until(core, arrives.value_or(serving));
        lag.push_back(safety::growth_with_lag(growth, rise, growth.q0_likely));
        no_lag.push_back(safety::growth_without_lag(growth, rise));
    }
    FoodPlan plan;
    plan.food = food.food;
    plan.piece = food.piece;
    plan.standard = food.standard;
    const Band when = band_of(ready);
    plan.ready_likely = setup.trip->from.after(Duration{when.likely});
    plan.ready_late = setup.trip->from.after(Duration{when.high});
    plan.core_peak = band_of(peak);
    plan.kill = band_of(kill);
    plan.come_up = band_of(come_up);
    plan.growth_with_lag = band_of(lag);
    plan.growth_without_lag = band_of(no_lag);
    return plan;
}

units::LocalTime latest_food_in(const Plan& plan) {
    Duration slack{1e9};
    for (const FoodPlan& food : plan.foods) {
        slack = std::min(slack, plan.trip->serve.since(food.ready_late));
        // Later food meets other top-ups: the hold time in the coolest bath that is allowed must fit as well.
        if (const auto hold = safe_hold(plan, food, food.food->thickness, first_hold_bath(plan, food))) {
            const Duration by_hold = plan.trip->serve.since(plan.fill.food_in) - *hold;
            slack = std::min(slack, std::max(by_hold, Duration{0}));
        }
    }
    return plan.fill.food_in.after(Duration{std::floor(slack.si() / 900.0) * 900.0});
}

}  // namespace holdwater::plan
