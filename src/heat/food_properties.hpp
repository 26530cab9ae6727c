// SPDX-License-Identifier: MIT
// Thermal properties of a food: from its composition, or as measured. Constants of a run, at the mean temperature.
#pragma once

#include "facts/facts.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

namespace holdwater::heat {

struct FoodProperties {
    units::Conductivity conductivity;
    units::Diffusivity diffusivity;
    units::Density density;
    units::SpecificHeat specific_heat;
};

enum class MixingRule { parallel, series };

/// Choi & Okos components and mixing rules at one temperature, -5 to 100 C (no ice: below the freezing point the
/// value is that of the unfrozen food).
FoodProperties properties_from(const facts::Composition& composition, units::Temperature at, MixingRule rule);

/// Which way a reading errs: slow warms (and cools) the core late, fast early.
enum class Bound { slow, likely, fast };

/// The readings that the program uses for a composition, see facts film.* and diffusivity.*: slow and fast bracket the
/// measured values, likely is the middle.
FoodProperties reading_of(const facts::Composition& composition, units::Temperature at, Bound reading);

/// The same food with another diffusivity: conductivity follows, density and specific heat stay.
FoodProperties with_diffusivity(FoodProperties properties, units::Diffusivity diffusivity);

}  // namespace holdwater::heat
