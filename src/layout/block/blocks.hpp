// SPDX-License-Identifier: MIT
// Each block of a card as a fragment of a given width. One function a block; `build` visits them all.
#pragma once

#include "card/content.hpp"
#include "layout/block/fragment.hpp"
#include "layout/style.hpp"
#include "layout/text/text.hpp"

#include <vector>

namespace holdwater::layout {

Fragment heading(const card::Heading& block, const BlockContext& setting);
Fragment key_number(const card::KeyNumber& block, const BlockContext& setting);
Fragment key_row(const card::KeyRow& block, const BlockContext& setting);
Fragment steps(const card::Steps& block, const BlockContext& setting, int first_number = 1);
Fragment table(const card::Table& block, const BlockContext& setting);
Fragment ladder(const card::Ladder& block, const BlockContext& setting);
Fragment thermometer(const card::Thermometer& block, const BlockContext& setting);
/// Along the longer side of the card; bars that have no room are left out, and the last bar says so.
Fragment staircase(const card::Staircase& block, const BlockContext& setting);
Fragment bands(const card::Bands& block, const BlockContext& setting);
Fragment curve(const card::Curve& block, const BlockContext& setting);
Fragment day_bar(const card::DayBar& block, const BlockContext& setting);
Fragment note(const card::Note& block, const BlockContext& setting);
Fragment write_in(const card::WriteIn& block, const BlockContext& setting);
/// A drawing that there is not, or that cannot be read, is our own fault: std::logic_error.
Fragment drawings(const card::Drawings& block, const BlockContext& setting);

/// All cautions of a face together: warnings first, under one bar.
Fragment cautions(const std::vector<card::Caution>& blocks, const BlockContext& setting);

/// A ruler takes a strip of the face instead of a place in its column: at the left edge of an upright card, along the
/// foot of a wide one. `items` have the card's own origin, since ticks start at the cut.
struct RulerStrip {
    std::vector<Item> items;
    Millimetres left;        // mm that the column loses on its left
    Millimetres bottom;      // or at its foot
    Millimetres cut_off_mm;  // from here on the ruler has no room and says so; 0: whole
    Millimetres too_tight;   // mm by which the labels do not find room
    Group group;
};
RulerStrip ruler(const card::Ruler& block, const BlockContext& setting);

/// Ruler and Turn are no business of a column: empty fragments.
Fragment build(const card::Block& block, const BlockContext& setting);

/// "table", "steps": what an error calls a block.
const char* block_name(const card::Block& block);

/// The style of running text and of figures that one acts on.
TextStyle body_style(const BlockContext& setting);
TextStyle figure_style(const BlockContext& setting);

}  // namespace holdwater::layout
