// SPDX-License-Identifier: MIT
// Ice that keeps the raw food cold on the way.
#pragma once

#include "plan/result/between.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>

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
    units::HeatLoss waits_loss;    // of the box there, wind included
};

/// Ice at 0 C [kg] that keeps the food at or below facts raw.cold to the end. Drained: meltwater runs off at once and
/// helps no more; otherwise it stays and warms with the food. Nothing is needed where neither food nor air is warmer.
units::Mass ice_drained(const IceQuestion& question);
units::Mass ice_undrained(const IceQuestion& question);

/// Which box the ice was reckoned in.
enum class IceBox {
    named,     // a box of the trip, by its test
    given,     // by its loss, which the trip gives
    planning,  // none was named: a poor one (facts journey.box-loss)
};

struct Ice {
    Between<units::Mass> drained;  // low and likely in the air that is expected; high with every cautious end
    units::Mass undrained;         // at the cautious ends
    units::Mass card;              // drained, cautious, rounded up
    units::Volume takes_up;        // of that ice, in cubes or crushed
    units::Volume food;
    units::Duration takes;  // the way, and until the last of the food goes in
    IceBox box = IceBox::planning;
    std::string name;                   // of a named box
    Between<units::HeatLoss> loss;      // of the box on the way, still air
    bool waits_elsewhere = false;       // the named box is that of the bath: until it is in, food waits in another
    std::optional<units::Volume> room;  // what a named box holds; of another nobody knows
    bool fits = true;                   // food and ice together, as far as that is known
};

/// Nothing for a trip without a journey.
std::optional<Ice> ice_of(const Setup& setup, const Plan& plan);

/// The coldest air that raw food may meet on the way and until the last of it goes in, at its cautious end, if that
/// would freeze it (facts raw.freezes).
std::optional<units::Temperature> frost_of(const Setup& setup, const Plan& plan);

}  // namespace holdwater::plan
