// SPDX-License-Identifier: MIT
#include "card/figures/provision_rounding.hpp"

#include "card/figures/rounding.hpp"
#include "facts/facts.hpp"
#include "units/print.hpp"

#include <cmath>

namespace holdwater::card {

using units::Amount;
using units::System;
using units::Toward;

Amount water_to_fetch(const plan::WaterNeed& water, System system) {
    return units::amount(water.fetch, system, {1.0, Toward::up});
}

Amount most_to_boil(const plan::WaterNeed& water, System system) {
    return half_litres(water.boil_most, system, Toward::up);
}

Amount fuel_mass(units::Mass mass, facts::Fuel fuel, System system) {
    return fuel == facts::Fuel::wood ? units::amount(mass, system, {0.5, Toward::up})
                                     : small_mass(mass, system, Toward::up);
}

Amount fuel_mass(const plan::FuelNeed& fuel, System system) {
    return fuel_mass(fuel.card, fuel.fuel, system);
}

Amount ice_to_carry(const plan::Ice& ice, System system) {
    return units::amount(ice.card, system, {0.5, Toward::up});
}

units::Figure ice_box_loss(const plan::Ice& ice) {
    return units::figure(ice.loss.high.si(), 0.1, Toward::up, "W/K");
}

Amount slice_at_most(units::Length slice, System system) {
    return units::amount(slice, system, {1.0, Toward::down});
}

Amount air_under(const plan::Leftovers& leftovers, System system) {
    const bool us = units::first_of(system) == System::us;
    const units::Temperature whole =
        us ? units::fahrenheit(units::round_to(leftovers.air.fahrenheit(), 1.0, Toward::down))
           : units::celsius(units::round_to(leftovers.air.celsius(), 1.0, Toward::down));
    return units::amount(whole, system, {1.0, Toward::down});
}

int days_to_keep(const plan::Leftovers& leftovers) {
    return static_cast<int>(std::floor(units::in_hours(leftovers.keep) / 24.0 + 1e-9));
}

units::Temperature wax_sets() {
    const facts::Facts& facts = facts::facts();
    return facts.temperature("wax.floor") - facts.difference("wax.sets-below");
}

}  // namespace holdwater::card
