// SPDX-License-Identifier: MIT
#include "answer/gauge/levers.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::answer {
namespace {

/// Areas [m2] of one box: the bottom, which the lid equals, and the four walls. The lid lies over the first two
/// measures.
struct Areas {
    double bottom = 0.0;
    double walls = 0.0;
    double all() const { return 2.0 * bottom + walls; }
};

Areas areas_of(const trip::Box& box) {
    const double a = box.inside[0].si();
    const double b = box.inside[1].si();
    return {a * b, 2.0 * (a + b) * box.inside[2].si()};
}

double covered(const Areas& areas, facts::Faces faces) {
    switch (faces) {
        case facts::Faces::bottom:
        case facts::Faces::lid:
            return areas.bottom;
        case facts::Faces::walls:
            return areas.walls;
        case facts::Faces::over:
            return areas.bottom + areas.walls;
        case facts::Faces::all:
            return areas.all();
    }
    return 0.0;
}

/// Returns UA' = UA - A_c (U - U'), U' = 1 / (1/U + R) [W/K]: A_c the covered area, U = UA / A, R the added resistance
/// [m2 K/W]. Source: resistances in a row, Earle (heat reference), from memory. Valid for a loss above zero.
units::HeatLoss with_resistance(units::HeatLoss loss, const Areas& areas, double area, units::ThermalResistance added) {
    const double even = loss.si() / areas.all();
    return units::HeatLoss{loss.si() - area * (even - 1.0 / (1.0 / even + added.si()))};
}

}  // namespace

std::vector<Levered> levers_on(const trip::Box& box, units::HeatLoss loss) {
    const Areas areas = areas_of(box);
    std::vector<Levered> all;
    for (const facts::Lever& lever : facts::facts().levers()) {
        const double area = covered(areas, lever.faces);
        const auto with = [&](units::ThermalResistance r) { return with_resistance(loss, areas, area, r); };
        const units::ThermalResistance middle = (lever.low + lever.high) / 2.0;
        all.push_back({&lever, {with(lever.high), with(middle), with(lever.low)}});
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Levered& a, const Levered& b) { return a.loss.likely < b.loss.likely; });
    return all;
}

std::string words_of(const Levered& one, units::HeatLoss before) {
    return fmt::format("{}: {:.2f} to about {:.2f} W/K; measure it with gauge", one.lever->what, before.si(),
                       one.loss.likely.si());
}

}  // namespace holdwater::answer
