// SPDX-License-Identifier: MIT
#include "plan/outcome.hpp"

#include <algorithm>
#include <cmath>

#include "plan/hold_table.hpp"
#include "safety/growth.hpp"

namespace holdwater::plan {
using units::Duration;

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<Lived>& lived, std::size_t index) {
    const Setup& setup = ensemble.setup();
    const FoodSetup& food = setup.foods[index];
    const auto band = [&](double LivedFood::*member) {
        std::vector<double> values;
        values.reserve(lived.size());
        for (const Lived& one : lived) {
            values.push_back(one.foods[index].*member);
        }
        return ensemble.band(values);
    };
    FoodPlan plan;
    plan.food = food.food;
    plan.piece = food.piece;
    plan.standard = food.standard;
    const Band when = band(&LivedFood::ready);
    plan.ready_likely = setup.trip->from.after(Duration{when.likely});
    plan.ready_late = setup.trip->from.after(Duration{when.high});
    plan.core_peak = band(&LivedFood::peak);
    plan.kill = band(&LivedFood::kill);
    plan.come_up = band(&LivedFood::come_up);
    plan.growth_with_lag = band(&LivedFood::growth_with_lag);
    plan.growth_without_lag = band(&LivedFood::growth_without_lag);
    return plan;
}

units::LocalTime latest_food_in(const Plan& plan) {
    Duration slack{lived_never};
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

std::optional<ColdBath> cold_bath(const Setup& setup) {
    const facts::Facts& facts = facts::facts();
    const double most = facts.value("fall.growth");
    std::optional<ColdBath> worst;
    for (const FoodSetup& food : setup.foods) {
        const facts::GrowthModel& model = facts.growth(facts.find_food(food.food->kind)->growth);
        const auto under = safety::warmest_growth(model, most, model.q0_cautious, facts.duration("fall.eat-now"));
        const auto soonest = under ? safety::fastest_growth(model, most, model.q0_cautious, *under) : std::nullopt;
        if (!soonest) {
            continue;
        }
        const units::Temperature read = *under + setup.box->thermometer.value_or(units::kelvins(0));
        worst = worst ? ColdBath{std::max(worst->under, read), std::min(worst->longest, *soonest)}
                      : ColdBath{read, *soonest};
    }
    if (worst) {
        worst->longest = std::min(worst->longest, facts.duration("fall.deep-for"));
    }
    return worst;
}

}  // namespace holdwater::plan
