// SPDX-License-Identifier: MIT
#include "layout/block/marks.hpp"

#include <cmath>
#include <numbers>
#include <utility>

namespace holdwater::layout {

namespace {

using Point = PlacedPath::Point;

void place_shape(std::vector<Item>& items, std::vector<Point> points, double grey) {
    PlacedPath shape;
    shape.points = std::move(points);
    shape.closed = true;
    shape.filled = true;
    shape.fill_grey = grey;
    shape.stroke_pt = 0.0_pt;
    items.emplace_back(std::move(shape));
}

/// A round corner as a short polyline about (x, y), from angle `from` over a third of a turn.
void round_corner(std::vector<Point>& points, Millimetres x, Millimetres y, Millimetres radius, double from) {
    constexpr int parts = 6;
    for (int i = 0; i <= parts; ++i) {
        const double angle = from + 2.0 * std::numbers::pi / 3.0 * i / parts;
        points.push_back({x + radius * std::cos(angle), y + radius * std::sin(angle)});
    }
}

}  // namespace

Millimetres warning_width(Millimetres height) {
    return 1.14 * height;
}

void place_warning_sign(std::vector<Item>& items, Millimetres x, Millimetres y, Millimetres height, double grey) {
    const Millimetres width = warning_width(height);
    const Millimetres radius = 0.09 * height;
    const Millimetres middle = x + 0.5 * width;
    std::vector<Point> outline;
    // Corners of an equal-sided triangle, rounded: right foot, left foot, top; y runs down.
    constexpr double sixth = std::numbers::pi / 6.0;
    round_corner(outline, x + width - radius * 1.2, y + height - radius, radius, -sixth);
    round_corner(outline, x + radius * 1.2, y + height - radius, radius, std::numbers::pi / 2.0);
    round_corner(outline, middle, y + radius, radius, 7.0 * sixth);
    place_shape(items, std::move(outline), grey);

    const double other = grey > 0.5 ? 0.0 : 1.0;
    const Millimetres top = y + 0.34 * height;
    const Millimetres stem = y + 0.70 * height;
    const Millimetres wide = 0.085 * height;
    const Millimetres narrow = 0.05 * height;
    place_shape(items, {{middle - wide, top}, {middle + wide, top}, {middle + narrow, stem}, {middle - narrow, stem}},
                other);
    const Millimetres dot = y + 0.76 * height;
    const Millimetres half = 0.07 * height;
    place_shape(items,
                {{middle - half, dot},
                 {middle + half, dot},
                 {middle + half, dot + 2.0 * half},
                 {middle - half, dot + 2.0 * half}},
                other);
}

void place_arrow(std::vector<Item>& items, Millimetres x, Millimetres y, Millimetres height, double grey) {
    place_shape(items, {{x, y}, {x + 0.8 * height, y + 0.5 * height}, {x, y + height}}, grey);
}

}  // namespace holdwater::layout
