// SPDX-License-Identifier: MIT
// The outline that lies under the laminating film while it is cut.
#pragma once

#include "layout/block/blocks.hpp"

namespace holdwater::layout {

struct LaminateOutline {
    Fragment part;
    Millimetres width;
};

/// True to scale; turned by a quarter where only so it is no wider than `room`.
LaminateOutline laminate_outline(const card::LaminateTemplate& block, const BlockContext& setting, Millimetres room);

}  // namespace holdwater::layout
