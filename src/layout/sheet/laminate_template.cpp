// SPDX-License-Identifier: MIT
#include "layout/sheet/laminate_template.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace holdwater::layout {

namespace {

/// The outline of a box with round corners as a polyline; a chord of it leaves the arc by under 0.01 mm.
PlacedPath rounded(Millimetres width, Millimetres height, Millimetres radius) {
    constexpr int steps = 24;  // a quarter circle
    PlacedPath made;
    made.closed = true;
    made.stroke_pt = rule_pt;
    made.role = Role::cut_mark;
    const Millimetres centres[4][2] = {
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

LaminateOutline laminate_outline(const card::LaminateTemplate& block, const BlockContext& setting, Millimetres room) {
    const Millimetres border{block.border_mm};
    Millimetres paper_width{block.paper_width_mm};
    Millimetres paper_height{block.paper_height_mm};
    if (paper_width + 2.0 * border > room && paper_height < paper_width) {
        std::swap(paper_width, paper_height);
    }
    LaminateOutline made;
    made.width = paper_width + 2.0 * border;
    made.part.height = paper_height + 2.0 * border;
    made.part.too_wide = std::max(0.0_mm, made.width - room);
    made.part.items.emplace_back(rounded(made.width, made.part.height, Millimetres{block.corner_mm}));
    PlacedPath paper;
    paper.points = {{border, border},
                    {border + paper_width, border},
                    {border + paper_width, border + paper_height},
                    {border, border + paper_height}};
    paper.closed = true;
    paper.stroke_pt = rule_pt;
    paper.dash_mm = {2.0_mm, 1.5_mm};
    paper.role = Role::cut_mark;
    made.part.items.emplace_back(paper);
    constexpr Millimetres inset = 6.0_mm;
    const Fragment words = paragraph(block.label, body_style(setting), paper_width - 2.0 * inset, setting.measure);
    put(made.part, words, border + inset, 0.5 * (made.part.height - words.height));
    return made;
}

}  // namespace holdwater::layout
