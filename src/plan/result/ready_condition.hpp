// SPDX-License-Identifier: MIT
// "Ready at that time if it never read under that": the condition, and the readings that it goes by.
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::plan {

/// Ready no sooner than the Hold table's engine has it in a bath that always reads what the condition of ready names:
/// whoever keeps to the condition is ready in 95 of 100 ways, not only whoever has the usual readings. Where the meal
/// is too soon for that, the condition asks for hotter readings, up to those of the fill.
void let_ready_hold(const Plan& plan, FoodPlan& food);

/// The same, with the condition no higher than what is to be read on the way: a cook who looks an hour after the food
/// went in and at every top-up until it is ready by the cards, and reads what they say that it should read, finds it
/// kept. `plan` has fill and top-ups.
void let_ready_hold_as_read(const Plan& plan, FoodPlan& food);

/// What the box should read at a moment at which in 95 of 100 scenarios it reads at least `low`: that, or the condition
/// of a food to come that is in time only if the bath reads more. Whole degrees, of the trip's units.
units::Temperature should_read(const Plan& plan, units::LocalTime at, units::Temperature low);

/// When the reading of Fill::after_food is due.
units::LocalTime settled_at(const Plan& plan);
/// True if the cards ask for that reading: no fire for a top-up comes sooner, nor the meal.
bool tells_settled(const Plan& plan);

}  // namespace holdwater::plan
