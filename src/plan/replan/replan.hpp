// SPDX-License-Identifier: MIT
// It is late, or it reads otherwise than planned: the plan from here on.
#pragma once

#include "plan/result/plan.hpp"

#include <optional>

namespace holdwater::plan {

/// What somebody finds at the box on the way.
struct Found {
    units::LocalTime now;
    units::Temperature reading;               // of the bath, before anything is done about it
    std::optional<units::LocalTime> food_in;  // when it went in; nothing: as planned
    std::optional<units::Length> below_rim;   // the water stands so far below it; nothing: as planned
    std::optional<units::Temperature> core;   // of the first food, measured; nothing: as planned
};

struct Replanned {
    Plan plan;  // its top-ups up to now are behind
    Found found;
    units::Duration later{0};  // the meal, than the trip says
};

/// From here on: what to pour, when the food is ready, and by how much the meal is later where it cannot be ready in
/// time. What the plan had until now is taken as done, the fill and the top-ups, in every scenario; the bath is what it
/// reads. Doneness is what it has become: tolerance is not asked for any more. A core that was measured leaves the
/// scenarios that come nearest to it.
/// Errors: those of the trip's own plan; replan-before-food (food is not in by then: a trip with that start is a plan
/// of its own), replan-after-meal, replan-no-thermometer, replan-below-floor (what was below the floor is for a written
/// log), replan-core (no scenario has such a core), replan-too-cold (it
/// falls below its floor before the pots boil).
problem::Result<Replanned> replan(const trip::Trip& trip, const Found& found);

}  // namespace holdwater::plan
