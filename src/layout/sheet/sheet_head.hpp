// SPDX-License-Identifier: MIT
// What stands at the head of every sheet of paper: what it is, the rule of printing, the bar that proves the scale.
#pragma once

#include "layout/layout.hpp"

#include <string>

namespace holdwater::layout {

/// Below the printer's upper margin [mm].
inline constexpr Millimetres sheet_head_height = 8.0_mm;

/// `title` is cut short with an ellipsis where the sheet is too narrow for it; the page's name and the rules never are.
void place_sheet_head(Page& page, const Sheet& sheet, const std::string& title, const Measure& measure,
                      const Phrases& phrases);

}  // namespace holdwater::layout
