// SPDX-License-Identifier: MIT
// The line drawings of layouts/drawings: plain SVG that any drawing program opens, black on white, in millimetres of
// the printed card. They are compiled in.
#pragma once

#include "layout/page.hpp"
#include "problem/problem.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::layout {

/// Side of a drawing at its own size: what a card may hold.
inline constexpr Millimetres least_drawing_side{5.0};
inline constexpr Millimetres most_drawing_side{200.0};

/// A drawing at its own size, from its top left. Read are g, path, line, polyline, polygon, circle, ellipse and rect,
/// with transforms that keep shapes, filled black, white or not at all, with black lines of at least 0.4 pt that have
/// round ends and corners; what a drawing program writes of itself is passed over. Anything else would print otherwise
/// than it is seen and is refused, with its line and column: layout-unreadable, layout-key-missing, layout-key-unknown,
/// layout-number-expected, layout-out-of-range.
problem::Result<PlacedDrawing> read_drawing(std::string_view svg, const std::string& file_name);

/// By the name of its file without ".svg". One that there is not, or that cannot be read, is our own fault:
/// std::logic_error, which names it.
const PlacedDrawing& drawing_named(std::string_view name);

/// Of all drawings, in order.
std::vector<std::string> drawing_names();

/// Of this height [mm], with its lines grown or thinned alike.
PlacedDrawing drawing_of_height(const PlacedDrawing& drawing, Millimetres height);

}  // namespace holdwater::layout
