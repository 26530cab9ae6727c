// SPDX-License-Identifier: MIT
// Small own drawings: the warning triangle, the arrow of a turn.
#pragma once

#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

/// A triangle with an exclamation mark, `height` high and as wide as warning_width(height), its top left at (x, y).
/// Solid in `grey` with the mark in the other tone.
void place_warning_sign(std::vector<Item>& items, Millimetres x, Millimetres y, Millimetres height, double grey);
Millimetres warning_width(Millimetres height);

/// A solid arrow head pointing right, `height` high and as wide as 0.8 of it.
void place_arrow(std::vector<Item>& items, Millimetres x, Millimetres y, Millimetres height, double grey = 0.0);

}  // namespace holdwater::layout
