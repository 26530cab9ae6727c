// SPDX-License-Identifier: MIT
// Liquid water and the atmosphere: boiling point at an altitude, density, specific heat.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

namespace holdwater::heat {

/// Standard-atmosphere pressure [Pa] at a geometric altitude from -500 to 11 000 m (us-std-atm-1976).
/// Error: altitude-out-of-range.
problem::Result<units::Pressure> standard_pressure(units::Length altitude);

/// Saturation temperature of water, IAPWS-IF97 Eq. 31, 611.213 Pa to 22.064 MPa. Error: pressure-out-of-range.
problem::Result<units::Temperature> boiling_point(units::Pressure pressure);

/// Boiling point at a geometric altitude, both of the above.
problem::Result<units::Temperature> boiling_point_at(units::Length altitude);

/// Density of liquid water at 1 atm, 0 to 100 C (clamped outside), Kell 1975.
units::Density water_density(units::Temperature t);

/// Mean specific heat of liquid water between 0 and 100 C used in all energy balances [J/(kg K)].
units::SpecificHeat water_specific_heat();

}  // namespace holdwater::heat
