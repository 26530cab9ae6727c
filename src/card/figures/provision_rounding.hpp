// SPDX-License-Identifier: MIT
// The figures around the box as the Kitchen card, its numbers and the terminal print them: each made here, once.
#pragma once

#include "plan/provisions/provisions.hpp"
#include "units/amount.hpp"

namespace holdwater::card {

/// Up to a litre; up to half a litre.
units::Amount water_to_fetch(const plan::WaterNeed& water, units::System system);
units::Amount most_to_boil(const plan::WaterNeed& water, units::System system);
/// Wood in kilograms, gas in grams; up.
units::Amount fuel_mass(units::Mass mass, facts::Fuel fuel, units::System system);
units::Amount fuel_mass(const plan::FuelNeed& fuel, units::System system);
units::Amount ice_to_carry(const plan::Ice& ice, units::System system);
/// The cautious loss of the box that the ice was reckoned in: "1.3 W/K".
units::Figure ice_box_loss(const plan::Ice& ice);

/// Slices may be so thick: down. The air in which they cool must be colder: down.
units::Amount slice_at_most(units::Length slice, units::System system);
units::Amount air_under(const plan::Leftovers& leftovers, units::System system);
int days_to_keep(const plan::Leftovers& leftovers);

/// Down to here beeswax that was clear may stay clear as it cools.
units::Temperature wax_sets();

}  // namespace holdwater::card
