// SPDX-License-Identifier: MIT
// From directions to the few modes of a whole body that matter. Inside heat/ only.
#pragma once

#include "heat/body.hpp"

#include <vector>

namespace holdwater::heat {

/// One direction of a body: radial exponent b (0 between parallel faces) and the way [m] from its slowest point to its
/// wetted face.
struct Direction {
    double b = 0.0;
    double half = 0.0;
};

/// The body whose temperature is the product over one to three directions, the same film on every wetted face.
Modes product_of(const std::vector<Direction>& directions, const FoodProperties& properties,
                 units::FilmCoefficient film);

}  // namespace holdwater::heat
