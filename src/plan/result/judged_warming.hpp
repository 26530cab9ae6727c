// SPDX-License-Identifier: MIT
// Whether a written log of a plan would be let pass for how soon its food warmed.
#pragma once

#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

/// A bath that always reads this; times since food in.
units::History always(units::Temperature reading);

/// What the bath reads since this food went in, by the thermometer of the box: what no more than a twentieth of the
/// scenarios read less than, a quarter of an hour apart.
units::History low_readings(const Ensemble& ensemble, const std::vector<ScenarioResult>& results, const FoodPlan& food);

/// True if the core comes up soon enough for the rules in a bath that reads this, with piece, thermometer and box at
/// their worst all at once: so a written log is judged.
bool surely_comes_up(const Plan& plan, const FoodPlan& food, const units::History& readings);

}  // namespace holdwater::plan
