// SPDX-License-Identifier: MIT
// Pieces of one sort of meat, for tests of heat.
#pragma once

#include "heat/body.hpp"

#include <doctest/doctest.h>

#include <utility>

namespace holdwater::support {

/// Lean meat around 50 C.
inline const heat::FoodProperties meat{units::Conductivity{0.48}, units::Diffusivity{1.3e-7}, units::Density{1050},
                                       units::SpecificHeat{3516}};

/// The modes of such a piece; its measures in mm, its film in W/m2/K.
inline heat::Modes piece_of_meat(facts::Shape shape, double thickness, double width, double length, double film) {
    heat::Body body;
    body.shape = shape;
    body.thickness = units::millimetres(thickness);
    body.width = units::millimetres(width);
    body.length = units::millimetres(length);
    auto modes = heat::modes_of(body, meat, units::FilmCoefficient{film});
    REQUIRE(modes.ok());
    return std::move(modes).value();
}

}  // namespace holdwater::support
