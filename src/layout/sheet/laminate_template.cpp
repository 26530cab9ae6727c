// SPDX-License-Identifier: MIT
#include "layout/sheet/laminate_template.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace holdwater::layout {

namespace {

/// The outline of a box with round corners as a polyline; a chord of it leaves the arc by under 0.01 mm.
PlacedPath rounded(double width, double height, double radius) {
    constexpr int steps = 24;  // a quarter circle
    PlacedPath made;
    made.closed = true;
    made.stroke_pt = rule_pt;
    made.role = Role::cut_mark;
    const double centres[4][2] = {
        {width - radius, radius}, {width - radius, height - radius}, {radius, height - radius}, {radius, radius}};
    for (int corner = 0; corner < 4; ++corner) {
        for (int i = 0; i <= steps; ++i) {
            const double angle = 0.5 * std::numbers::pi * (corner - 1 + static_cast<double>(i) / steps);
            made.points.push_back(
                {centres[corner][0] + radius * std::cos(angle), centres[corner][1] + radius * std::sin(angle)});
        }
    }
    return made;
}

}  // namespace

LaminateOutline laminate_outline(const card::LaminateTemplate& block, const BlockContext& setting, double room) {
    double paper_width = block.paper_width_mm;
    double paper_height = block.paper_height_mm;
    if (paper_width + 2.0 * block.border_mm > room && paper_height < paper_width) {
        std::swap(paper_width, paper_height);
    }
    LaminateOutline made;
    made.width = paper_width + 2.0 * block.border_mm;
    made.part.height = paper_height + 2.0 * block.border_mm;
    made.part.too_wide = std::max(0.0, made.width - room);
    made.part.items.emplace_back(rounded(made.width, made.part.height, block.corner_mm));
    PlacedPath paper;
    paper.points = {{block.border_mm, block.border_mm},
                    {block.border_mm + paper_width, block.border_mm},
                    {block.border_mm + paper_width, block.border_mm + paper_height},
                    {block.border_mm, block.border_mm + paper_height}};
    paper.closed = true;
    paper.stroke_pt = rule_pt;
    paper.dash_mm = {2.0, 1.5};
    paper.role = Role::cut_mark;
    made.part.items.emplace_back(paper);
    constexpr double inset = 6.0;
    const Fragment words = paragraph(block.label, body_style(setting), paper_width - 2.0 * inset, setting.measure);
    put(made.part, words, block.border_mm + inset, 0.5 * (made.part.height - words.height));
    return made;
}

}  // namespace holdwater::layout
