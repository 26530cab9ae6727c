// SPDX-License-Identifier: MIT
// What is taken of a piece and a box of which too little is said: large ones, since these ask more of the fire.
#pragma once

#include "facts/names.hpp"
#include "units/quantity.hpp"

#include <array>

namespace holdwater::trip {

/// A large piece of that thickness and shape [kg], rounded up to 50 g: a slab or block once and a half as wide and more
/// than twice as long as it is thick, but never under the size of a hand; a round four times as long as it is thick; a
/// ball is one. Judgement: heavier pieces take more heat out of the bath and leave less room in the box.
units::Mass large_piece(facts::Shape shape, units::Length thickness);

/// Inside measures, to the centimetre, of a box that is a third larger than the water and the food in it, as long as
/// five to three of its width and depth: judgement. A larger box has larger walls and loses more.
std::array<units::Length, 3> roomy_box(units::Volume water, units::Mass food);

}  // namespace holdwater::trip
