// SPDX-License-Identifier: MIT
// A piece of a face with its own origin at its top left, ready to be put anywhere.
#pragma once

#include "layout/page.hpp"

#include <vector>

namespace holdwater::layout {

struct Fragment {
    Millimetres height;
    std::vector<Item> items;  // with their rows and cells; their group is the fragment's
    Millimetres too_wide;     // mm by which something in it does not fit its column
    bool squeezed = false;    // brief words had to be broken; fits, but asks for no larger type
    Group group = {};
};

Item moved(Item item, Millimetres dx, Millimetres dy);

/// Grown about the origin: places, sizes and line weights alike.
Item scaled(Item item, double factor);

/// A quarter turn: what ran to the right from the left edge runs up from the foot of a page of this height [mm].
Item turned(Item item, Millimetres height);

void put(std::vector<Item>& onto, const std::vector<Item>& items, Millimetres dx, Millimetres dy);

/// Puts `part` at (dx, dy) and takes over how much it is too wide; the height is the caller's business.
void put(Fragment& onto, const Fragment& part, Millimetres dx, Millimetres dy);

PlacedLine line(Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2, Points width_pt);
PlacedBox filled_box(Millimetres x, Millimetres y, Millimetres width, Millimetres height, double grey = 0.0);
/// An outline whose outer edge is the given box.
PlacedBox frame(Millimetres x, Millimetres y, Millimetres width, Millimetres height, Points stroke_pt);

}  // namespace holdwater::layout
