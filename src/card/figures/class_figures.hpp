// SPDX-License-Identifier: MIT
// All figures of the class cards, made and rounded before there is a card, as those of a trip.
#pragma once

#include "card/class/class_frame.hpp"
#include "card/figures/list.hpp"

#include <optional>
#include <vector>

namespace holdwater::card {

/// By the keys of the class cards: "hold", "reading", "full", "mix", "touch", "trouble".
FigureList class_figures(const ClassFrame& frame, const words::Words& words);

/// Water in the box that the cards Reading and Full box have a column for.
const std::vector<units::Volume>& common_litres();

/// Parts of boiling to one part cold, so that the mixture likely comes out at a bath after the usual cooling on its
/// way; and how cool and hot it may be. Nothing: out of reach.
struct ClassMix {
    double parts = 0.0;
    units::Temperature low;
    units::Temperature high;
};
std::optional<ClassMix> class_mix(const ClassFrame& frame, units::Temperature bath, bool with_ice_water);
/// Parts as cards and exercises print them: to a tenth, up, since less boiling water is the cooler side.
units::Figure parts_to_mix(double parts);

/// The number among the figures of a cell in a row of so many columns: from 1, row by row.
constexpr int class_cell(std::size_t row, std::size_t column, std::size_t columns) {
    return static_cast<int>(row * columns + column) + 1;
}

}  // namespace holdwater::card
