// SPDX-License-Identifier: MIT
// Measuring strips longer than a card: cut into as many pieces as the sheet asks for, each at true scale.
#pragma once

#include "layout/block/blocks.hpp"

#include <vector>

namespace holdwater::layout {

inline constexpr Millimetres strip_width = 48.0_mm;  // mm

struct StripPieces {
    std::vector<Fragment> pieces;  // from the foot up, each `strip_width` wide and no higher than the room
    Millimetres too_tight;         // mm by which the labels of a piece do not find room
};

/// The ticks lie at the strip's left edge; where it takes more than one piece, the lower one has a tab to glue the
/// upper one on.
StripPieces strip_pieces(const card::Strip& strip, const BlockContext& setting, Millimetres room);

/// What it shows, in the words that stand on it.
std::string described(const card::Strip& strip);

}  // namespace holdwater::layout
