// SPDX-License-Identifier: MIT
// How much later than planned the fire may be lit, with all times of the plan moved by as much.
#pragma once

#include "plan/search/schedule.hpp"

namespace holdwater::plan {

/// The latest food in [whole quarters of an hour after the planned one] with which the same schedule, begun later,
/// keeps its promises and every food is ready when it leaves the bath, as its ready time says. Worked through in one
/// set of scenarios of the weather of that time. Never sooner than planned, nor later by more than `at_most`.
units::LocalTime latest_food_in(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan,
                                units::Duration at_most);

}  // namespace holdwater::plan
