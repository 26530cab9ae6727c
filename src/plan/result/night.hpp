// SPDX-License-Identifier: MIT
// A bath left alone: how long it keeps above a level, and what a low reading in the morning means.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

/// What a bath left alone stands in: constant air, wind as position 0 still to 2 windy.
struct Surroundings {
    units::Temperature air;
    double wind = 1.0;
};

/// How long the bath, food in it and as warm as itself, stays at or above what it must after this reading: the time
/// that all but the allowed share of scenarios keep [s]. Zero if it is below already.
units::Duration left_alone(const Ensemble& ensemble, units::Temperature reading, const Surroundings& around);

/// The bath so long after it was at `from`, nobody warming it, in the trip's wind and coldest air: all but the allowed
/// share of scenarios are warmer.
units::Temperature coldest_after(const Ensemble& ensemble, units::Temperature from, units::Duration since);

/// What the cards say of a top-up: left_alone in the wind of the trip and its coldest air, down to a quarter of an
/// hour.
units::Duration longest_alone(const Ensemble& ensemble, units::Temperature reading);

/// How long the meal may wait in the bath after serving, without another top-up: what all but the allowed share of
/// scenarios keep at the action line, in the coldest air of those hours; at the most facts wait.longest.
units::Duration may_wait(const Ensemble& ensemble, const std::vector<ScenarioResult>& results);

/// No hot water for `out`, from the moment a top-up is due on, in the coldest air of the trip and `colder` K on top.
struct FireOut {
    units::Duration below;  // longest time below the floor, until bath and core are back above it; zero: never below
    safety::FallAction action = safety::FallAction::none;
};
FireOut fire_out(const Ensemble& ensemble, units::Temperature mark, units::Duration out,
                 units::TemperatureDifference colder);

/// Night card of a schedule.
Night night_of(const Ensemble& ensemble, const Schedule& schedule, const std::vector<ScenarioResult>& results);

}  // namespace holdwater::plan
