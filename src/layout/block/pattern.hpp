// SPDX-License-Identifier: MIT
// Fills that differ without colour, drawn as lines that end at the edge of their box.
#pragma once

#include "card/content.hpp"
#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

/// fill solid, cook close diagonals, hold wide upright lines, sleep level lines; with an outline.
void place_pattern(std::vector<Item>& items, card::DayBar::Kind kind, Millimetres x, Millimetres y, Millimetres width,
                   Millimetres height);

}  // namespace holdwater::layout
