// SPDX-License-Identifier: MIT
#include "layout/block/pattern.hpp"

#include "layout/block/fragment.hpp"
#include "layout/style.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr double line_pt = 0.5;

void diagonals(std::vector<Item>& items, double x, double y, double width, double height, double step) {
    // Lines x + y = c in the box's own coordinates, from edge to edge.
    for (double c = step; c < width + height; c += step) {
        const double x1 = std::max(0.0, c - height);
        const double x2 = std::min(width, c);
        items.emplace_back(line(x + x1, y + c - x1, x + x2, y + c - x2, line_pt));
    }
}

}  // namespace

void place_pattern(std::vector<Item>& items, card::DayBar::Kind kind, double x, double y, double width, double height) {
    switch (kind) {
        case card::DayBar::Kind::fill:
            items.emplace_back(filled_box(x, y, width, height));
            break;
        case card::DayBar::Kind::cook:
            diagonals(items, x, y, width, height, 1.5);
            break;
        case card::DayBar::Kind::hold:
            for (double at = 2.2; at < width - 0.3; at += 2.2) {
                items.emplace_back(line(x + at, y, x + at, y + height, line_pt));
            }
            break;
        case card::DayBar::Kind::sleep:
            for (double at = 1.1; at < height - 0.3; at += 1.1) {
                items.emplace_back(line(x, y + at, x + width, y + at, line_pt));
            }
            break;
    }
    items.emplace_back(frame(x, y, width, height, rule_pt));
}

}  // namespace holdwater::layout
