// SPDX-License-Identifier: MIT
// Ice that keeps the raw food cold on the way.
#pragma once

#include "plan/result/between.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::plan {

struct Setup;
struct Plan;

/// A box with raw food and melting ice in steady air.
struct IceQuestion {
    units::HeatLoss loss;  // wind included
    units::Temperature air;
    units::Duration takes;
    units::HeatCapacity food;  // of all of it
    units::Temperature food_start;
    units::HeatCapacity liner;     // as warm as the air at the start
    units::Duration waits;         // after that, at the fire
    units::Temperature waits_air;  // there
};

/// Ice at 0 C [kg] that keeps the food at or below facts raw.cold to the end. Drained: meltwater runs off at once and
/// helps no more; otherwise it stays and warms with the food. Nothing is needed where neither food nor air is warmer.
units::Mass ice_drained(const IceQuestion& question);
units::Mass ice_undrained(const IceQuestion& question);

struct Ice {
    Between<units::Mass> drained;  // low and likely in the air that is expected; high with every cautious end
    units::Mass undrained;         // at the cautious ends
    units::Mass card;              // drained, cautious, rounded up
    units::Volume takes_up;        // of that ice, in cubes or crushed
    units::Volume room;            // what the box holds
    units::Volume food;
    units::Duration takes;  // the way, and until the last of the food goes in
    bool fits = true;       // food and ice together
};

/// Nothing for a trip without a journey.
std::optional<Ice> ice_of(const Setup& setup, const Plan& plan);

}  // namespace holdwater::plan
