// SPDX-License-Identifier: MIT
#include "trip/large_piece.hpp"

#include "trip/shape_mass.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::trip {
namespace {

constexpr double width_by_thickness = 1.5;
constexpr double length_by_thickness = 2.3;
constexpr double round_by_thickness = 4.0;
constexpr units::Length hand_width = units::millimetres(100);
constexpr units::Length hand_length = units::millimetres(140);
constexpr units::Mass mass_step{0.05};
constexpr double room_left = 4.0 / 3.0;
constexpr double length_by_width = 5.0 / 3.0;
constexpr units::Length measure_step = units::millimetres(10);

}  // namespace

units::Mass large_piece(facts::Shape shape, units::Length thickness) {
    Food food;
    food.shape = shape;
    food.thickness = thickness;
    if (shape == facts::Shape::round) {
        food.length = thickness * round_by_thickness;
    } else {
        food.width = std::max(thickness * width_by_thickness, hand_width);
        food.length = std::max(thickness * length_by_thickness, hand_length);
    }
    const double kilograms = density_for_check.si() * volume_of(food)->si();
    return mass_step * std::ceil(kilograms / mass_step.si());
}

std::array<units::Length, 3> roomy_box(units::Volume water, units::Mass food) {
    const double room = (water.si() + food.si() / density_for_check.si()) * room_left;
    const double width = std::cbrt(room / length_by_width);
    const auto whole = [](double measure) { return measure_step * std::ceil(measure / measure_step.si()); };
    return {whole(width * length_by_width), whole(width), whole(width)};
}

}  // namespace holdwater::trip
