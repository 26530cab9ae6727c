// SPDX-License-Identifier: MIT
// Nobody can measure, and a pour comes later than the plan allows for: until when boiling the food through saves it.
#pragma once

#include "plan/result/plan.hpp"
#include "plan/search/schedule.hpp"

namespace holdwater::plan {

/// The same decision as after any fall that nobody watched: from the latest pour that the plan allows the bath is taken
/// to have been at its floor and to have fallen at the fast end of the box in the trip's coldest air, and the clock
/// runs on until the core is back above the floor in boiling water, however raw it still was. Nothing where no lateness
/// is saved, or where water does not boil hot enough.
std::optional<LatePour> late_pour(const Ensemble& ensemble, const Schedule& schedule);

/// What to do where nobody can measure and a pour comes so late.
enum class LateStep { none, boil_and_eat, throw_away };
LateStep late_step(const Plan& plan, units::Duration late);

/// The same for a what-if without fire, at its worst: the pots had just to be boiled anew.
LateStep late_step(const Plan& plan, const WhatIfAnswer& answer);

}  // namespace holdwater::plan
