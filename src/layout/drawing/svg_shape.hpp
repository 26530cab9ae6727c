// SPDX-License-Identifier: MIT
// The shapes that SVG has, each as the path that it stands for.
#pragma once

#include "layout/drawing/svg_element.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace holdwater::layout {

/// The attributes that say where a shape lies; nothing if there is no such shape.
std::optional<std::span<const std::string_view>> places_of_shape(std::string_view name);

/// A shape as path data; nothing, with its fault, if something is missing or no number.
std::optional<std::string> path_data_of(const SvgElement& element, SvgSource& source);

}  // namespace holdwater::layout
