// SPDX-License-Identifier: MIT
// What the simulated scenarios say about each food and about the promise as a whole.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<ScenarioResult>& results, std::size_t food);

/// The bath in which germs can grow by as much as a fall may allow, sooner than its longest clock, and how soon. By the
/// food whose germs are the fastest.
std::vector<safety::ColdBath> cold_baths(const Setup& setup);

/// What the decision after a fall asks of this trip, and the germs of its foods.
safety::FallRules fall_rules(const Setup& setup);
std::vector<const facts::GrowthModel*> growth_models(const Setup& setup);

}  // namespace holdwater::plan
