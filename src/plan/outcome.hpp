// SPDX-License-Identifier: MIT
// What the lived scenarios say about each food and about the promise as a whole.
#pragma once

#include "plan/ensemble.hpp"
#include "plan/schedule.hpp"

namespace holdwater::plan {

FoodPlan food_plan(const Ensemble& ensemble, const std::vector<Run>& lived, std::size_t food);

/// Share of the scenarios in which the bath fell below the floor (as the food sees it) or the action line.
double share_failing(const Ensemble& ensemble, const std::vector<Run>& lived);

/// Food in later than planned by what is left between ready and serving, over all foods.
units::LocalTime latest_food_in(const Plan& plan);

}  // namespace holdwater::plan
