// SPDX-License-Identifier: MIT
// Blocks that may be cut between two rows when they are taller than a whole face.
#pragma once

#include "layout/face/face.hpp"

#include <cstddef>
#include <utility>

namespace holdwater::layout {

/// Rows between which a block may be cut; 0 for a block that stays whole.
std::size_t rows_of(const card::Block& block);

/// The first `rows` rows, and the rest with the block's head repeated. Needs 0 < rows < rows_of(block).
std::pair<Piece, Piece> split_after(const Piece& piece, std::size_t rows);

}  // namespace holdwater::layout
