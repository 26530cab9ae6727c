// SPDX-License-Identifier: MIT
// How a box is filled to a reading: how much cold water, how many pours.
#pragma once

#include <optional>

#include "plan/search/simulation.hpp"

namespace holdwater::plan {

/// The cold litres and the number of pours that bring the box's water to a fill reading, by the likely scenario.
/// Nothing if the reading cannot be had (above what boiling water can give).
std::optional<Recipe> recipe_for(const Setup& setup, units::Temperature reading);

}  // namespace holdwater::plan
