// SPDX-License-Identifier: MIT
// How far below the rim water must stand, as a ruler shows it.
#pragma once

#include "card/shared/figures.hpp"

namespace holdwater::card {

/// In the first system; further down rather than higher up.
units::Amount water_line(const CardWriter& writer, units::Length below_rim);

}  // namespace holdwater::card
