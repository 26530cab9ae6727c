// SPDX-License-Identifier: MIT
// Whether a name that a user gives can stand on every card.
#pragma once

#include "layout/text/measure.hpp"
#include "problem/problem.hpp"

#include <optional>
#include <string_view>

namespace holdwater::layout {

/// What keeps a name, in UTF-8, from the cards of some format, and what would be right: name-glyph, where one of the
/// two faces lacks a character, name-word-wide, where a word that cannot be broken is too wide for a column, and
/// name-wide, where all of it takes too many lines. The message does not say which name it is. Nothing if it can stand.
std::optional<problem::Problem> name_fault(std::string_view name, const Measure& measure);

}  // namespace holdwater::layout
