// SPDX-License-Identifier: MIT
// Natural convection: what film still water gives a piece that hangs free in it.
#pragma once

#include "units/quantity.hpp"

namespace holdwater::heat {

/// Nusselt number of a vertical plate of height L in terms of the Rayleigh and Prandtl numbers, any Rayleigh number.
double nusselt_vertical_plate(double rayleigh, double prandtl);
/// The same, laminar only: better below 1e9.
double nusselt_laminar_plate(double rayleigh, double prandtl);
/// Nusselt number of a horizontal cylinder of diameter D, Rayleigh 1e-5 to 1e12.
double nusselt_horizontal_cylinder(double rayleigh, double prandtl);

enum class Hanging { upright_slab, lying_round };

/// Film [W/(m2 K)] of still water around a piece: `size` is the height of an upright slab or the diameter of a lying
/// round; `difference` between surface and water, at least 0.01 K. An estimate for a piece kept apart; touching pieces,
/// pouches and corners have far less (facts, spread film).
units::FilmCoefficient film_of_still_water(Hanging how, units::Length size, units::Temperature water,
                                           units::TemperatureDifference difference);

}  // namespace holdwater::heat
