// SPDX-License-Identifier: MIT
#include "layout/block/pattern.hpp"

#include "layout/block/fragment.hpp"
#include "layout/style.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr Points line_pt = 0.5_pt;

void diagonals(std::vector<Item>& items, Millimetres x, Millimetres y, Millimetres width, Millimetres height,
               Millimetres step) {
    // Lines x + y = c in the box's own coordinates, from edge to edge.
    for (Millimetres c = step; c < width + height; c += step) {
        const Millimetres x1 = std::max(0.0_mm, c - height);
        const Millimetres x2 = std::min(width, c);
        items.emplace_back(line(x + x1, y + c - x1, x + x2, y + c - x2, line_pt));
    }
}

}  // namespace

void place_pattern(std::vector<Item>& items, card::DayBar::Kind kind, Millimetres x, Millimetres y, Millimetres width,
                   Millimetres height) {
    switch (kind) {
        case card::DayBar::Kind::fill:
            items.emplace_back(filled_box(x, y, width, height));
            break;
        case card::DayBar::Kind::cook:
            diagonals(items, x, y, width, height, 1.5_mm);
            break;
        case card::DayBar::Kind::hold:
            for (Millimetres at = 2.2_mm; at < width - 0.3_mm; at += 2.2_mm) {
                items.emplace_back(line(x + at, y, x + at, y + height, line_pt));
            }
            break;
        case card::DayBar::Kind::sleep:
            for (Millimetres at = 1.1_mm; at < height - 0.3_mm; at += 1.1_mm) {
                items.emplace_back(line(x, y + at, x + width, y + at, line_pt));
            }
            break;
    }
    items.emplace_back(frame(x, y, width, height, rule_pt));
}

}  // namespace holdwater::layout
