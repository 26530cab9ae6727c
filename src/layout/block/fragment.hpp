// SPDX-License-Identifier: MIT
// A piece of a face with its own origin at its top left, ready to be put anywhere.
#pragma once

#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

struct Fragment {
    double height = 0.0;
    std::vector<Item> items;  // with their rows and cells; their group is the fragment's
    double too_wide = 0.0;    // mm by which something in it does not fit its column
    bool squeezed = false;    // brief words had to be broken; fits, but asks for no larger type
    Group group = {};
};

Item moved(Item item, double dx, double dy);

/// Grown about the origin: places, sizes and line weights alike.
Item scaled(Item item, double factor);

/// A quarter turn: what ran to the right from the left edge runs up from the foot of a page of this height [mm].
Item turned(Item item, double height);

void put(std::vector<Item>& onto, const std::vector<Item>& items, double dx, double dy);

/// Puts `part` at (dx, dy) and takes over how much it is too wide; the height is the caller's business.
void put(Fragment& onto, const Fragment& part, double dx, double dy);

PlacedLine line(double x1, double y1, double x2, double y2, double width_pt);
PlacedBox filled_box(double x, double y, double width, double height, double grey = 0.0);
/// An outline whose outer edge is the given box.
PlacedBox frame(double x, double y, double width, double height, double stroke_pt);

}  // namespace holdwater::layout
