// SPDX-License-Identifier: MIT
#include "layout/check/geometry.hpp"

#include "layout/style.hpp"

#include <algorithm>
#include <limits>

namespace holdwater::layout {

Rect extent(const PlacedText& text) {
    const bool low = text.text.find_first_of("gjpqyQ,;()") != std::string::npos;
    const Millimetres up = ascent(text.size_pt);
    const Millimetres down = low ? descent(text.size_pt) : 0.02 * em(text.size_pt);
    if (text.upward) {
        return {text.x - up, text.baseline - text.width, text.x + down, text.baseline};
    }
    return {text.x, text.baseline - up, text.x + text.width, text.baseline + down};
}

Rect extent(const PlacedLine& rule) {
    const Rect bare{std::min(rule.x1, rule.x2), std::min(rule.y1, rule.y2), std::max(rule.x1, rule.x2),
                    std::max(rule.y1, rule.y2)};
    // Butt ends: a level or upright rule is wider only across itself.
    const Millimetres half = 0.5 * em(rule.width_pt);
    Rect made = bare;
    if (bare.y1 == bare.y2) {
        made.y1 -= half;
        made.y2 += half;
    } else if (bare.x1 == bare.x2) {
        made.x1 -= half;
        made.x2 += half;
    }
    return made;
}

Rect extent(const PlacedBox& box) {
    return Rect{box.x, box.y, box.x + box.width, box.y + box.height}.grown(0.5 * em(box.stroke_pt));
}

Rect extent(const PlacedPath& path) {
    constexpr Millimetres far{std::numeric_limits<double>::infinity()};
    Rect made{far, far, -far, -far};
    for (const auto& point : path.points) {
        made.x1 = std::min(made.x1, point.x);
        made.y1 = std::min(made.y1, point.y);
        made.x2 = std::max(made.x2, point.x);
        made.y2 = std::max(made.y2, point.y);
    }
    return made.grown(0.5 * em(path.stroke_pt));
}

Rect extent(const PlacedDrawing& drawing) {
    return {drawing.x, drawing.y, drawing.x + drawing.width, drawing.y + drawing.height};
}

Rect extent(const Item& item) {
    return std::visit([](const auto& one) { return extent(one); }, item);
}

bool enters(const Rect& rect, Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2) {
    // Clip the line to the rectangle, side by side; what is left of [0, 1] lies within.
    double from = 0.0;
    double to = 1.0;
    const auto clip = [&](Millimetres start, Millimetres step, Millimetres low, Millimetres high) {
        if (step == 0.0_mm) {
            return start > low && start < high;
        }
        double a = (low - start) / step;
        double b = (high - start) / step;
        if (a > b) {
            std::swap(a, b);
        }
        from = std::max(from, a);
        to = std::min(to, b);
        return from < to;
    };
    return clip(x1, x2 - x1, rect.x1, rect.x2) && clip(y1, y2 - y1, rect.y1, rect.y2);
}

bool inside(const PlacedPath& path, Millimetres x, Millimetres y) {
    bool within = false;
    const auto& points = path.points;
    for (std::size_t i = 0, j = points.size() - 1; i < points.size(); j = i++) {
        const bool spans = (points[i].y > y) != (points[j].y > y);
        if (spans && x < (points[j].x - points[i].x) * (y - points[i].y).value() / (points[j].y - points[i].y).value() +
                             points[i].x) {
            within = !within;
        }
    }
    return within;
}

}  // namespace holdwater::layout
