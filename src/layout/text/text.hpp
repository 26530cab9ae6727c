// SPDX-License-Identifier: MIT
// Text to lines: emphasis, quiet units, line breaking. Widths come from Measure, once.
#pragma once

#include "layout/block/fragment.hpp"
#include "layout/text/measure.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::layout {

struct TextStyle {
    Points size_pt = 10.0_pt;
    Weight face = Weight::regular;  // outside asterisks
    Points unit_pt;                 // size of a unit after a bold number; 0: as the text
    bool quiet_units = true;        // such a unit is regular
    double grey = 0.0;
    Role role = Role::paragraph;
};

/// A stretch of one face and size.
struct TextRun {
    std::string text;  // may hold U+00A0 until placed
    Weight face = Weight::regular;
    Points size_pt;
    Millimetres width;
};

struct TextLine {
    std::vector<TextRun> runs;
    Millimetres width;
};

/// Joins a number and a unit that an author left apart ("71 °C" with a plain space) by a no-break space.
std::string join_units(std::string_view text);

/// Emphasis and units resolved; spaces still inside the runs.
std::vector<TextRun> styled(std::string_view text, const TextStyle& style, const Measure& measure);

TextLine one_line(std::string_view text, const TextStyle& style, const Measure& measure);

/// As few lines as the width allows; among those the evenest, without a single word on the last line where that can be
/// had. Breaks at spaces and after hyphens, never at U+00A0. A word wider than the column stands alone and sticks out.
/// The first line may be shorter by an indent.
std::vector<TextLine> break_lines(std::string_view text, const TextStyle& style, Millimetres width,
                                  const Measure& measure, Millimetres first_indent = {});

/// Width of the widest part that cannot be broken.
Millimetres widest_word(std::string_view text, const TextStyle& style, const Measure& measure);

/// The text, or as much of its beginning as `fits` allows and an ellipsis; whole characters only.
std::string shortened(std::string_view text, const std::function<bool(const std::string&)>& fits);

void place(std::vector<Item>& items, const TextLine& text, Millimetres x, Millimetres baseline, const TextStyle& style);

/// Lines as a fragment: left at x = 0, first capitals at the top.
Fragment paragraph(std::string_view text, const TextStyle& style, Millimetres width, const Measure& measure,
                   Millimetres first_indent = {});

}  // namespace holdwater::layout
