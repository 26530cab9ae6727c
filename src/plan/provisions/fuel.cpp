// SPDX-License-Identifier: MIT
#include "plan/provisions/fuel.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "plan/result/plan.hpp"
#include "plan/result/reading_rows.hpp"
#include "units/print.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

/// Heat of burning [MJ/kg] by the least, likely and most that a kilogram gives.
Between<double> heat_of_burning(const trip::Fire& fire) {
    const facts::Facts& facts = facts::facts();
    if (fire.fuel == facts::Fuel::wood) {
        const facts::Figure& usual = facts.figure("fuel.wood.moisture");
        return {wood_heat(fire.moisture.value_or(usual.high)), wood_heat(fire.moisture.value_or(usual.value)),
                wood_heat(fire.moisture.value_or(usual.low))};
    }
    const facts::Figure& gas = facts.figure(fire.fuel == facts::Fuel::propane ? "fuel.propane" : "fuel.butane");
    return {gas.low, gas.value, gas.high};
}

}  // namespace

WaterNeed water_of(const Plan& plan, units::Volume besides) {
    using units::Toward;
    WaterNeed water;
    water.cold = plan.fill.cold;
    water.boil_likely = plan.fill.boiled + plan.fill.warming;
    const double measured = facts::facts().spread("litres").high;
    // The cards round what is boiled up, each time that it is boiled.
    water.boil_most = to_half_litre(std::max(plan.fill.boiled_most, plan.fill.boiled * measured), Toward::up) +
                      plan.fill.warming * measured;
    const bool reads = plan.trip->boxes.front().thermometer.has_value();
    for (const TopUp& top_up : plan.top_ups) {
        water.boil_likely += top_up.boiling;
        const units::Volume put_on = reads ? to_put_on(plan, top_up.reading.low) : top_up.boiling;
        water.boil_most += to_half_litre(std::max(top_up.boiling_most, put_on), Toward::up);
    }
    const units::Volume finish = water_to_finish(plan);
    water.boil_likely += finish + besides;
    water.boil_most += to_half_litre(finish, Toward::up) + to_half_litre(besides, Toward::up);
    if (reads) {
        water.spare = to_put_on(plan, plan.levels.read_floor);
    }
    // Boiling litres are some 4 % fewer while they are cold; the cook who adds up the card must not miss them.
    water.fetch = water.cold * measured + water.boil_most + water.spare;
    return water;
}

units::Energy heat_to_boil(units::Volume boiling_litres, units::Temperature cold, units::Temperature boiling,
                           double pot_share) {
    const double mass = boiling_litres.si() * heat::water_density(boiling).si();
    return units::Energy{mass * heat::water_specific_heat().si() * (1.0 + pot_share) * (boiling - cold).si()};
}

double wood_heat(double moisture) {
    // Returns the net calorific value at moisture M % of the wet mass [MJ/kg] = NCV0 (100 - M)/100 - 0.02443 M; NCV0 of
    // oven-dry wood (facts fuel.wood.dry), 0.02443 the evaporation of a hundredth of a kilogram of water (2.443 MJ/kg).
    // Source: en-iso-18125, from memory. Valid for 0 to 0.6; readers refuse what lies outside.
    const double percent = moisture * 100.0;
    return facts::facts().value("fuel.wood.dry") * (100.0 - percent) / 100.0 - 0.02443 * percent;
}

std::optional<FuelNeed> fuel_for(const trip::Fire& fire, const Between<units::Energy>& heat) {
    if (fire.fuel == facts::Fuel::none_needed) {
        return std::nullopt;
    }
    const bool wood = fire.fuel == facts::Fuel::wood;
    const facts::Figure& efficiency = facts::facts().figure(wood ? "fuel.wood.efficiency" : "fuel.gas.efficiency");
    const Between<double> burning = heat_of_burning(fire);
    FuelNeed need;
    need.fuel = fire.fuel;
    need.heat = heat;
    if (wood) {
        need.moisture = fire.moisture.value_or(facts::facts().value("fuel.wood.moisture"));
        need.moisture_given = fire.moisture.has_value();
    }
    const auto mass = [](units::Energy energy, double share, double mega) {
        return units::Mass{energy.si() / (share * mega * 1e6)};
    };
    need.mass.low = mass(heat.low, efficiency.high, burning.high);
    need.mass.likely = mass(heat.likely, efficiency.value, burning.likely);
    need.mass.high = mass(heat.high, efficiency.low, burning.low);
    const double step = facts::facts().value(wood ? "fuel.wood.step" : "fuel.gas.step");
    need.card = units::Mass{units::round_to(need.mass.high.si(), step, units::Toward::up)};
    return need;
}

std::optional<FuelNeed> fuel_of(const Plan& plan, const WaterNeed& water) {
    const facts::Figure& pot = facts::facts().figure("fuel.pot-share");
    const auto heat = [&](units::Volume litres, double share) {
        return heat_to_boil(litres, plan.trip->fire.cold_water, plan.levels.boiling, share);
    };
    return fuel_for(plan.trip->fire, {heat(water.boil_likely, pot.low), heat(water.boil_likely, pot.value),
                                      heat(water.boil_most + water.spare, pot.high)});
}

}  // namespace holdwater::plan
