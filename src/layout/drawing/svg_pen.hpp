// SPDX-License-Identifier: MIT
// With what a shape is drawn: fill, line and the transform of the groups around it.
#pragma once

#include "layout/drawing/svg_element.hpp"
#include "layout/drawing/svg_outline.hpp"

#include <optional>

namespace holdwater::layout {

struct SvgPen {
    std::optional<double> fill = 0.0;  // a grey: 0 black, 1 white; nothing: not filled
    bool stroked = false;              // always black
    double width = 1.0;                // of its line, in units before the transform
    bool round_ends = false;
    bool round_corners = false;
    Transform transform;
};

/// The pen for an element inside one that is drawn with `around`. What SVG has and a card has not, tones, dashes,
/// filters, is a fault.
SvgPen pen_of(const SvgElement& element, const SvgPen& around, SvgSource& source);

/// Attributes that say how, and those that say nothing of how it looks: what a drawing program writes of itself.
bool is_of_pen(std::string_view key);
bool is_beside_the_point(std::string_view key);

}  // namespace holdwater::layout
