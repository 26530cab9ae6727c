// SPDX-License-Identifier: MIT
#include "layout/block/curve_parts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace holdwater::layout {

namespace {

struct Range {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    double span() const { return std::max(high - low, 1e-9); }
};

std::array<const CurvePoints*, 4> lines_of(const card::Curve& block) {
    return {&block.likely, &block.low, &block.high, &block.second};
}

PlacedPath path_of(const CurvePoints& points, const CurveScale& scale, Points stroke_pt) {
    PlacedPath path;
    for (const auto& point : points) {
        path.points.push_back({scale.x(point.x), scale.y(point.y)});
    }
    path.stroke_pt = stroke_pt;
    return path;
}

constexpr Millimetres smallest_mark = 0.4_mm;  // mm, for a 10 pt body

/// Circles shrink where readings stand close, down to a size that still shows as one.
Millimetres mark_radius(const card::Curve& block, const CurveScale& scale, const BlockContext& setting) {
    const Millimetres largest = setting.scaled(0.8_mm);
    const Millimetres smallest = setting.scaled(smallest_mark);
    const Millimetres spacing =
        (scale.right - scale.left) / static_cast<double>(std::max<std::size_t>(block.marks.size(), 1));
    return std::clamp(0.4 * spacing, smallest, largest);
}

bool crosses(const CurvePoints& points, const CurveScale& scale, Millimetres x1, Millimetres y1, Millimetres x2,
             Millimetres y2) {
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Millimetres ax = scale.x(points[i - 1].x);
        const Millimetres bx = scale.x(points[i].x);
        if (bx < x1 || ax > x2) {
            continue;
        }
        const Millimetres ay = scale.y(points[i - 1].y);
        const Millimetres by = scale.y(points[i].y);
        if (std::max(ay, by) >= y1 && std::min(ay, by) <= y2) {
            return true;
        }
    }
    return false;
}

}  // namespace

CurveScale::CurveScale(const card::Curve& block) {
    Range xs;
    Range ys;
    for (const auto* points : {&block.likely, &block.low, &block.high, &block.second, &block.marks}) {
        for (const auto& point : *points) {
            xs.take(point.x);
            ys.take(point.y);
        }
    }
    for (const auto& label : block.x_labels) {
        xs.take(label.at);
    }
    for (const auto& [from, to] : block.gaps) {
        xs.take(from);
        xs.take(to);
    }
    for (const auto& label : block.y_labels) {
        ys.take(label.at);
    }
    ys.take(block.floor);
    const double air = 0.06 * ys.span();
    ys.low -= air;
    ys.high += 0.5 * air;
    x_low_ = xs.low;
    x_span_ = xs.span();
    y_low_ = ys.low;
    y_span_ = ys.span();
}

void CurveScale::set_plot(Millimetres new_left, Millimetres new_top, Millimetres new_right, Millimetres new_bottom) {
    left = new_left;
    top = new_top;
    right = new_right;
    bottom = new_bottom;
}

PlacedPath curve_mark(Millimetres x, Millimetres y, Millimetres radius) {
    constexpr int corners = 16;
    PlacedPath circle;
    for (int i = 0; i < corners; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / corners;
        circle.points.push_back({x + radius * std::cos(turn), y + radius * std::sin(turn)});
    }
    circle.closed = true;
    circle.filled = true;
    circle.fill_grey = 1.0;
    circle.stroke_pt = 0.5 * (hair_pt + rule_pt);
    return circle;
}

void place_hatch(std::vector<Item>& items, Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2,
                 Millimetres step) {
    // The diagonals x + y = s that meet the box, each from where it enters to where it leaves.
    for (Millimetres s = x1 + y1 + step; s < x2 + y2; s += step) {
        const Millimetres from = std::max(x1, s - y2);
        const Millimetres to = std::min(x2, s - y1);
        if (to > from) {
            items.emplace_back(line(from, s - from, to, s - to, hair_pt));
        }
    }
    items.emplace_back(line(x1, y1, x1, y2, hair_pt));
    items.emplace_back(line(x2, y1, x2, y2, hair_pt));
}

void place_curve(std::vector<Item>& items, const card::Curve& block, const CurveScale& scale,
                 const BlockContext& setting) {
    if (!block.low.empty() && !block.high.empty()) {
        PlacedPath band = path_of(block.high, scale, 0.0_pt);
        for (auto point = block.low.rbegin(); point != block.low.rend(); ++point) {
            band.points.push_back({scale.x(point->x), scale.y(point->y)});
        }
        band.closed = true;
        band.filled = true;
        band.fill_grey = curve_band_grey;
        items.emplace_back(std::move(band));
        items.emplace_back(path_of(block.low, scale, hair_pt));
        items.emplace_back(path_of(block.high, scale, hair_pt));
    }
    for (const auto& [from, to] : block.gaps) {
        place_hatch(items, scale.x(from), scale.top, scale.x(to), scale.bottom, setting.scaled(2.2_mm));
    }
    const Millimetres radius = mark_radius(block, scale, setting);
    const auto place_marks = [&] {
        for (const auto& mark : block.marks) {
            items.emplace_back(curve_mark(scale.x(mark.x), scale.y(mark.y), radius));
        }
    };
    // Circles on the line as long as they stand apart; where they would hide it, the line runs over them.
    const bool dense = radius <= setting.scaled(smallest_mark);
    if (dense) {
        place_marks();
    }
    if (!block.second.empty()) {
        PlacedPath second = path_of(block.second, scale, rule_pt);
        second.dash_mm = curve_second_dash;
        items.emplace_back(std::move(second));
    }
    if (!block.likely.empty()) {
        items.emplace_back(path_of(block.likely, scale, heavy_pt));
    }
    PlacedLine floor = line(scale.left, scale.y(block.floor), scale.right, scale.y(block.floor), heavy_pt);
    floor.dash_mm = curve_floor_dash;
    items.emplace_back(floor);
    if (!dense) {
        place_marks();
    }
}

bool curve_takes(const card::Curve& block, const CurveScale& scale, Millimetres x1, Millimetres y1, Millimetres x2,
                 Millimetres y2) {
    for (const CurvePoints* const points : lines_of(block)) {
        if (crosses(*points, scale, x1, y1, x2, y2)) {
            return true;
        }
    }
    const Millimetres reach = 1.0_mm;  // mm, a little over the largest circle
    for (const auto& mark : block.marks) {
        const Millimetres x = scale.x(mark.x);
        const Millimetres y = scale.y(mark.y);
        if (x > x1 - reach && x < x2 + reach && y > y1 - reach && y < y2 + reach) {
            return true;
        }
    }
    return std::any_of(block.gaps.begin(), block.gaps.end(),
                       [&](const auto& gap) { return scale.x(gap.first) < x2 && scale.x(gap.second) > x1; });
}

}  // namespace holdwater::layout
