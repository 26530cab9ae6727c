// SPDX-License-Identifier: MIT
#include "trip/shape_mass.hpp"

#include "trip/parts.hpp"

#include <fmt/format.h>

#include <cmath>
#include <numbers>
#include <string>

namespace holdwater::trip {
namespace {

// A tape measure and a kitchen scale are good to a few per cent and no piece is a perfect body: judgement.
constexpr double odd_share = 0.15;
constexpr double wrong_share = 0.40;

std::string size_text(const Food& food) {
    const auto mm = [](units::Length l) { return fmt::format("{:.0f}", units::in_millimetres(l)); };
    std::string text = mm(food.thickness);
    if (food.width) {
        text += " x " + mm(*food.width);
    }
    if (food.length) {
        text += " x " + mm(*food.length);
    }
    return fmt::format("a {} of {} mm", facts::to_name(food.shape), text);
}

}  // namespace

std::optional<units::Volume> volume_of(const Food& food) {
    using std::numbers::pi;
    const double t = food.thickness.si();
    switch (food.shape) {
        case facts::Shape::slab:
        case facts::Shape::block:
            if (food.width && food.length) {
                return units::Volume{t * food.width->si() * food.length->si()};
            }
            return std::nullopt;
        case facts::Shape::round:
            if (food.length) {
                return units::Volume{pi / 4 * t * t * food.length->si()};
            }
            return std::nullopt;
        case facts::Shape::ball:
            return units::Volume{pi / 6 * t * t * t};
    }
    return std::nullopt;
}

void check_mass(const Food& food, Table& table) {
    const auto volume = volume_of(food);
    if (!volume) {
        return;
    }
    const double expected = density_for_check.si() * volume->si();
    const double off = food.mass.si() / expected - 1;
    if (std::abs(off) <= odd_share) {
        return;
    }
    const std::string message =
        fmt::format("mass: {:.3g} kg is {:.0f} % {} than {} would weigh, {:.3g} kg", food.mass.si(),
                    std::abs(off) * 100, off < 0 ? "less" : "more", size_text(food), expected);
    // A slab needs neither: its mass says how large its faces are.
    const std::string_view hint =
        food.shape == facts::Shape::slab
            ? "measure and weigh one piece again; mass is that of one piece; does it taper? leave width and length out"
            : "measure and weigh one piece again; mass is that of one piece";
    if (std::abs(off) > wrong_share) {
        table.error("mass", "mass-against-size", message, hint);
    } else {
        table.warning("mass", "mass-against-size", message, hint);
    }
}

}  // namespace holdwater::trip
