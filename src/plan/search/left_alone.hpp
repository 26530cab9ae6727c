// SPDX-License-Identifier: MIT
// A box that nobody touches any more: how its bath goes on, and how long it keeps. The one place that answers this.
#pragma once

#include "plan/search/ensemble.hpp"

#include <vector>

namespace holdwater::plan {

/// One scenario's bath from a moment on, without fire, food in it and as warm as it is: what is still to warm takes its
/// heat from the bath.
struct Alone {
    units::History bath;                 // true, its moments counted from the one it was left at
    units::TemperatureDifference error;  // of the thermometer: reading less bath
    units::Temperature level;            // that it must not fall below

    /// The first moment at or below a temperature; where it never comes down so far, the end of what was followed.
    units::Duration down_to(units::Temperature t) const;
    /// How long it keeps its level.
    units::Duration keeps() const { return down_to(level); }
    /// How long from when it reads this on its way down; nothing if it never read so much.
    std::optional<units::Duration> keeps_after(units::Temperature reading) const;
    /// The bath so long after it was left; past the end of what was followed, the last of it.
    units::Temperature after(units::Duration t) const { return bath.at(t); }
};

/// Follows a box, left as it is, until it meets its level or for so long. `through`: on through the level.
Alone left_alone(Simulation run, const Surroundings& around, units::Duration longest, bool through = false);

/// Several at once, each for so long at most.
std::vector<Alone> left_alone(std::vector<Simulation> runs, const Surroundings& around,
                              const std::vector<units::Duration>& longest, bool through = false);

/// The trip's wind and the coldest air of its forecast until serving; and its warmest.
Surroundings coldest_of(const Setup& setup);
units::Temperature warmest_of(const Setup& setup);

/// From then on the Night card holds: bedtime, without one an hour after the food went in, when the bath has settled.
units::Duration watch_from(const Setup& setup, units::Duration food_in);

}  // namespace holdwater::plan
