// SPDX-License-Identifier: MIT
// A bath left alone: how long it keeps above a level, and what a low reading in the morning means.
#pragma once

#include "plan/result/left_boxes.hpp"
#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

/// How the bath goes on down from a temperature that it has when a top-up is latest, nobody warming it, in the trip's
/// wind and coldest air: all but the allowed share of scenarios are warmer, whichever top-up it was.
units::History coldest_fall(const Ensemble& ensemble, const Schedule& schedule, units::Temperature from,
                            units::Duration longest);

/// How long the meal may wait in the bath after serving, without another top-up: what all but the allowed share of
/// scenarios keep at the action line, in the coldest air of those hours; at the most facts wait.longest.
units::Duration may_wait(const LeftBoxes& boxes);

/// No hot water for `out`, from the moment a top-up is due on, whichever it is, in the coldest air of the trip and
/// `colder` K on top.
struct FireOut {
    units::Duration below;  // longest time below the floor, until bath and core are back above it; zero: never below
    safety::FallAction action = safety::FallAction::none;
};
FireOut fire_out(const Ensemble& ensemble, const Schedule& schedule, units::Duration out,
                 units::TemperatureDifference colder);

/// Night card of a schedule.
Night night_of(const Ensemble& ensemble, const Schedule& schedule, const LeftBoxes& boxes);

}  // namespace holdwater::plan
