// SPDX-License-Identifier: MIT
#include "heat/level.hpp"

#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::heat {
namespace {

units::Area bottom_of(const Inside& inside) {
    return units::Area{inside[0].si() * inside[1].si()};
}

units::Volume volume_of(const std::vector<Lying>& foods) {
    units::Volume sum;
    for (const Lying& food : foods) {
        sum += food.volume;
    }
    return sum;
}

}  // namespace

units::Volume room_in(const Inside& inside) {
    return volume_of(inside) * facts::facts().value("top-up.room");
}

units::Length level_of(const Inside& inside, units::Volume water, units::Volume food) {
    return units::Length{(water + food).si() / bottom_of(inside).si()};
}

units::Volume level_volume(const Inside& inside, units::Length height) {
    return units::Volume{height.si() * bottom_of(inside).si()};
}

units::Length level_needed(const Inside& inside, const std::vector<Lying>& foods) {
    if (foods.empty()) {
        return units::Length{};
    }
    const double usable = facts::facts().value("cover.packing") * bottom_of(inside).si();
    const double gap = facts::facts().value("cover.apart") * 1e-3;
    double footprint = 0.0;
    double layer = 0.0;
    for (const Lying& food : foods) {
        footprint += food.footprint.si();
        layer = std::max(layer, food.height.si() + (food.apart ? gap : 0.0));
    }
    const double layers = std::max(1.0, std::ceil(footprint / usable));
    return units::Length{layers * layer + facts::facts().value("cover.above") * 1e-3};
}

problem::Problems level_faults(const Inside& inside, units::Volume water, const std::vector<Lying>& foods) {
    problem::Problems faults;
    const units::Volume food = volume_of(foods);
    const units::Volume room = room_in(inside);
    const double fits = std::floor(units::in_litres(room - food));
    if (water + food > room) {
        const std::string hint =
            fits > 0 ? fmt::format("fill {:.0f} L at the most, or take less food", fits) : "take less food";
        faults.push_back(problem::error(
            "bath-overflows",
            fmt::format("{:.1f} L of water and {:.1f} L of food do not fit: this box takes {:.1f} L below its rim",
                        units::in_litres(water), units::in_litres(food), units::in_litres(room)),
            hint));
    }
    const units::Length needed = level_needed(inside, foods);
    const units::Length level = level_of(inside, water, food);
    if (level < needed) {
        const units::Volume covers{needed.si() * bottom_of(inside).si() - food.si()};
        const double litres = std::ceil(units::in_litres(covers));
        faults.push_back(problem::error(
            "food-not-covered",
            fmt::format("the water stands {:.0f} mm high, and the food needs {:.0f} mm to lie under it",
                        std::floor(units::in_millimetres(level)), std::ceil(units::in_millimetres(needed))),
            litres <= fits ? fmt::format("fill {:.0f} L or more", litres)
                           : std::string("split the food, or take a box with a larger bottom")));
    }
    return faults;
}

bool floats(units::Density food, units::Temperature water) {
    return food < water_density(water);
}

}  // namespace holdwater::heat
