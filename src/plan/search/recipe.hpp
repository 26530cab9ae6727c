// SPDX-License-Identifier: MIT
// How a box is filled to a reading: how much cold water, how many pours.
#pragma once

#include "plan/search/simulation.hpp"

#include <optional>

namespace holdwater::plan {

inline constexpr double litre_step = 0.5e-3;  // m3, to which a cook measures water and cards print it

/// False for litres that would be measured, and printed, as none.
inline bool is_act(units::Volume litres) {
    return litres.si() >= litre_step / 2.0;
}

/// The cold litres and the number of pours that bring the box's water to a fill reading, by the likely scenario.
/// Nothing if the reading cannot be had (above what boiling water can give).
std::optional<Recipe> recipe_for(const Setup& setup, units::Temperature reading);

}  // namespace holdwater::plan
