// SPDX-License-Identifier: MIT
// The marks of a day bar as flags above it: as few rows as can be, and one flag for marks too close to have two.
#pragma once

#include "card/content.hpp"
#include "layout/style.hpp"
#include "layout/text/text.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::layout {

/// What stands on a flag for one mark: its clock time, and in words what it is; a time that the mark before it on the
/// same flag has said is not said again.
struct FlagText {
    TextLine clock;
    TextLine words;
    Millimetres x;        // of the clock, from the left of the flag
    Millimetres words_x;  // of the words
};

struct DayFlag {
    std::vector<FlagText> texts;
    std::vector<Millimetres> at;  // of its marks along the bar, rising [mm]
    Millimetres width;
    Millimetres left;
    int row = 0;  // 0 next to the bar
};

struct DayFlags {
    std::vector<DayFlag> flags;
    std::vector<Millimetres> bare;  // marks whose label found no room: a line on the bar and no more
};

/// `at` is the place of each mark along a bar of the context's width, rising. Marks share a flag where there are too
/// many, the nearest first; where even that does not do, labels without words go, then others, the last mark's never.
DayFlags day_flags(const std::vector<card::DayBar::Mark>& marks, const std::vector<Millimetres>& at,
                   const BlockContext& setting);

/// The style of a clock time on the bar.
TextStyle day_clock_style(const BlockContext& setting);

}  // namespace holdwater::layout
