// SPDX-License-Identifier: MIT
// The text of a drawing before a parser sees it, and where its attributes stand.
#pragma once

#include "problem/problem.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::layout {

/// Where in an element, whose name stands at `element`, an attribute stands; the element where it has none.
std::size_t place_of_attribute(std::string_view text, std::size_t element, std::string_view attribute);

/// The first thing for which the text may not be parsed: too long, too deep, a document type, which may define what is
/// nowhere to be seen, or bytes that no text has. Errors: layout-unreadable, layout-out-of-range.
std::optional<problem::Problem> beyond_drawing_bounds(std::string_view text, const std::string& file_name);

}  // namespace holdwater::layout
