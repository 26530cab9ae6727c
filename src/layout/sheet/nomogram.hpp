// SPDX-License-Identifier: MIT
// Scales for a thread, on a plain sheet.
#pragma once

#include "layout/block/blocks.hpp"

namespace holdwater::layout {

/// Of the height that the block asks for, over the whole width, with the names of the scales above them.
Fragment nomogram(const card::Nomogram& block, const BlockContext& setting);

}  // namespace holdwater::layout
