// SPDX-License-Identifier: MIT
// Which blocks stand on which face of a card.
#pragma once

#include "layout/face/face.hpp"

#include <vector>

namespace holdwater::layout {

/// Faces in order, each with what stands on it. A heading stays with what follows it. Errors: block-too-tall and
/// block-too-wide name the card, the block and the missing mm; ruler-crowded when its labels do not find room.
problem::Result<std::vector<std::vector<Piece>>> flow(const card::Card& card, const FaceMaker& maker,
                                                      const Format& format);

}  // namespace holdwater::layout
