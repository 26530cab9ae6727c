// SPDX-License-Identifier: MIT
// How high the water stands in the box: it must cover the food and stay below the rim.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <array>
#include <vector>

namespace holdwater::heat {

/// All pieces of one food, lying flat.
struct Lying {
    units::Length height;   // of one piece, or of the stack where they are stacked
    units::Area footprint;  // of all pieces (of the lowest ones where they are stacked)
    units::Volume volume;   // of all pieces
    bool apart = false;     // water runs between and below them (facts cover.apart)
};

/// Length, width and depth of a box, measured inside.
using Inside = std::array<units::Length, 3>;

/// What a box takes below its rim, water and food together (facts top-up.room).
units::Volume room_in(const Inside& inside);

/// Height of the water above the bottom [m] with all food under it.
units::Length level_of(const Inside& inside, units::Volume water, units::Volume food);

/// What the box holds up to a height above its bottom, water and food together. The other way round than level_of.
units::Volume level_volume(const Inside& inside, units::Length height);

/// Height above the bottom that the water must reach [m]: the food in as many layers as the bottom asks for, each as
/// high as its highest piece, and facts cover.above on top. Zero without food.
units::Length level_needed(const Inside& inside, const std::vector<Lying>& foods);

/// Errors: bath-overflows (with the litres that fit), food-not-covered (with the litres that would cover it). A piece
/// that is not covered warms as food in air does, which no figure of the program allows for.
problem::Problems level_faults(const Inside& inside, units::Volume water, const std::vector<Lying>& foods);

/// True for food that is lighter than the water around it, so that it floats even without air in its bag.
bool floats(units::Density food, units::Temperature water);

}  // namespace holdwater::heat
