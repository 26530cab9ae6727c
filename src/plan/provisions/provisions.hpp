// SPDX-License-Identifier: MIT
// Everything around the box that a plan settles: portions, water, fuel, ice, side dishes, sear, leftovers.
#pragma once

#include "answer/leftovers/leftovers.hpp"
#include "plan/provisions/fuel.hpp"
#include "plan/provisions/hot_water.hpp"
#include "plan/provisions/ice.hpp"
#include "plan/provisions/portions.hpp"
#include "plan/provisions/sear.hpp"
#include "plan/provisions/sides.hpp"
#include "problem/problem.hpp"

#include <optional>
#include <vector>

namespace holdwater::plan {

struct Setup;
struct Plan;

struct Leftovers {
    units::Temperature air;  // warmest that may be met while they cool, as used
    /// Every medium with both faces cooled, then with one; the thinnest over all foods, nothing where one food has
    /// none.
    std::vector<answer::ThickestSlice> slices;
    units::Duration begin;      // into the cold, since the piece left the bath
    units::Duration first;      // and down to facts cooling.middle
    units::Duration all;        // and down to facts cooling.to
    units::Duration keep;       // and eaten, by the rules of the trip
    units::Temperature reheat;  // once, to this core
    units::Duration reheat_hold;
};

/// Without a thermometer nobody can tell whether they were hot enough before, or cold in time; and there must be a cold
/// in which a slice is cold in time.
bool may_be_kept(const Leftovers& leftovers, const trip::Trip& trip);

/// A meal before the trip's serving, of foods that come out for it.
struct Meal {
    units::LocalTime serve;
    Portions portions;
    Sear sear;
};

struct Provisions {
    Portions portions;  // of all that is eaten at the trip's serving, from whatever box
    WaterNeed water;
    std::optional<FuelNeed> fuel;             // nothing: none is needed
    std::optional<Ice> ice;                   // nothing: no journey
    std::optional<units::Temperature> frost;  // air in which raw food that waits may freeze
    Sides sides;
    HotWaters hot_water;
    Sear sear;
    std::vector<Meal> earlier;  // in time order
    Leftovers leftovers;
    /// Warnings that go with a good plan: hot-water-clash, side-clash, too-many-sides, side-before-fire, sear-too-long,
    /// sear-no-place, ice-does-not-fit. Notes: portions-scarce, portions-too-small, held-long.
    problem::Problems notes;
};

/// The plan must be good and complete: fill, top-ups, foods.
Provisions provisions_of(const Setup& setup, const Plan& plan);

}  // namespace holdwater::plan
