// SPDX-License-Identifier: MIT
// What the simulated scenarios say about each food and about the promise as a whole.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<ScenarioResult>& results, std::size_t food);

/// Ready no sooner than the Hold table's engine has it in a bath that always reads what the condition of ready names:
/// whoever keeps to the condition is ready in 95 of 100 ways, not only whoever has the usual readings. Where the meal
/// is too soon for that, the condition asks for hotter readings, up to those of the fill.
void let_ready_hold(const Plan& plan, FoodPlan& food);

/// The bath in which germs can grow by as much as a fall may allow, sooner than its longest clock, and how soon. By the
/// food whose germs are the fastest.
std::vector<safety::ColdBath> cold_baths(const Setup& setup);

/// What the decision after a fall asks of this trip, and the germs of its foods.
safety::FallRules fall_rules(const Setup& setup);
std::vector<const facts::GrowthModel*> growth_models(const Setup& setup);

}  // namespace holdwater::plan
