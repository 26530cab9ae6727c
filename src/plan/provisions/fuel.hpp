// SPDX-License-Identifier: MIT
// Water to fetch and fuel to boil it.
#pragma once

#include "facts/names.hpp"
#include "plan/result/between.hpp"
#include "trip/trip.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::plan {

struct Plan;

struct WaterNeed {
    units::Volume cold;         // straight into the box
    units::Volume boil_likely;  // fill, top-ups, finish over the fire, and besides, as measured boiling
    units::Volume boil_most;    // every top-up at its most, the fill with the error of pouring
    units::Volume spare;        // for a top-up that no plan has, for a late meal or a colder box: the coldest row
    units::Volume fetch;        // cold litres in all, the spare with them, at the most
};
/// `besides`: boiling water for drinks and washing-up.
WaterNeed water_of(const Plan& plan, units::Volume besides = units::Volume{0});

/// Heat [J] that brings so much water, as measured boiling, from cold to the boil, its pot included.
units::Energy heat_to_boil(units::Volume boiling_litres, units::Temperature cold, units::Temperature boiling,
                           double pot_share);

/// Net heat of burning wood [MJ/kg] of a moisture, wet basis, 0 to 0.6.
double wood_heat(double moisture);

struct FuelNeed {
    facts::Fuel fuel = facts::Fuel::wood;
    std::optional<double> moisture;  // of wood, likely; as given or by facts fuel.wood.moisture
    bool moisture_given = false;
    Between<units::Energy> heat;  // into water and pots
    Between<units::Mass> mass;
    units::Mass card;  // the high end, rounded up
};

/// Fuel for a heat; nothing for a fire that needs none. Low: best fire and driest wood; high: the worst of both.
std::optional<FuelNeed> fuel_for(const trip::Fire& fire, const Between<units::Energy>& heat);

/// Fuel to boil the water of a plan; nothing besides.
std::optional<FuelNeed> fuel_of(const Plan& plan, const WaterNeed& water);

}  // namespace holdwater::plan
