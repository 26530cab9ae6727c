// SPDX-License-Identifier: MIT
// The outline that lies under the laminating film while it is cut.
#pragma once

#include "layout/blocks.hpp"

namespace holdwater::layout {

struct FilmOutline {
    Fragment part;
    double width = 0.0;
};

/// True to scale; turned by a quarter where only so it is no wider than `room`.
FilmOutline film_outline(const card::FilmTemplate& block, const Setting& setting, double room);

}  // namespace holdwater::layout
