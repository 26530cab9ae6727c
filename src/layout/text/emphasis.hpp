// SPDX-License-Identifier: MIT
// Text to runs of one face and size: "*bold*", quiet units after bold numbers, numbers joined to their units.
#pragma once

#include "layout/text/text.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::layout {

inline constexpr std::string_view no_break = "\u00A0";

inline bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
inline bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Bytes of the UTF-8 character that starts with this one.
std::size_t character_length(char first);

/// The words of a text without its marks of emphasis.
std::string unmarked(std::string_view text);

/// Adds to the last run if face and size are the same.
void add_text(std::vector<TextRun>& runs, std::string_view text, Weight face, Points size_pt);

/// Measures each run; the sum of their widths [mm].
Millimetres measure_runs(std::vector<TextRun>& runs, const Measure& measure);

}  // namespace holdwater::layout
