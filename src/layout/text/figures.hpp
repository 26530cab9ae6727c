// SPDX-License-Identifier: MIT
// A column of figures: whole numbers end at one line, decimals follow it, units stand under each other.
#pragma once

#include "card/content.hpp"
#include "layout/text/text.hpp"

#include <string>
#include <vector>

namespace holdwater::layout {

/// A cell of a figure column, cut in three: "12", ".5", " L". A cell that starts with no figure is all `words`.
struct Figure {
    TextLine whole;
    TextLine decimals;
    TextLine rest;
    TextLine words;
};

Figure figure_of(const card::Text& cell, const TextStyle& style, const Measure& measure);

/// What the cells of one column need, so that all stand in line.
struct FigureColumn {
    Millimetres whole;
    Millimetres decimals;
    Millimetres rest;
    Millimetres words;

    void take(const Figure& figure);
    Millimetres numbers() const { return whole + decimals + rest; }
    Millimetres width() const;
};

/// Puts a cell so that the column's right edge is at `right` (or its middle, where `align` says so).
void place_figure(std::vector<Item>& items, const Figure& figure, const FigureColumn& column, Millimetres left,
                  Millimetres width, card::Align align, Millimetres baseline, const TextStyle& style);

}  // namespace holdwater::layout
