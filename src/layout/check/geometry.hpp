// SPDX-License-Identifier: MIT
// How much of a page an item covers, for the checks.
#pragma once

#include "layout/page.hpp"

#include <string>

namespace holdwater::layout {

struct Rect {
    Millimetres x1, y1, x2, y2;

    bool overlaps(const Rect& other) const { return x1 < other.x2 && other.x1 < x2 && y1 < other.y2 && other.y1 < y2; }
    bool holds(const Rect& other) const { return x1 <= other.x1 && y1 <= other.y1 && x2 >= other.x2 && y2 >= other.y2; }
    Rect grown(Millimetres by) const { return {x1 - by, y1 - by, x2 + by, y2 + by}; }
};

/// Ink of a text, from the top of its capitals to below its lowest letter.
Rect extent(const PlacedText& text);
Rect extent(const PlacedLine& rule);
Rect extent(const PlacedBox& box);
Rect extent(const PlacedPath& path);
Rect extent(const PlacedDrawing& drawing);
Rect extent(const Item& item);

/// True if the straight line from (x1, y1) to (x2, y2) enters the rectangle.
bool enters(const Rect& rect, Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2);

/// True if the point lies in the closed polygon.
bool inside(const PlacedPath& path, Millimetres x, Millimetres y);

}  // namespace holdwater::layout
