// SPDX-License-Identifier: MIT
// What becomes of each food, in a line or two.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// Of every food its pieces, its centre in the bath or over the fire, and what else must be known of it.
std::vector<Note> food_lines(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
