// SPDX-License-Identifier: MIT
// Hold times of a food by thickness and bath, a bar of true length under each row: for trip and class alike.
#pragma once

#include "card/shared/writer.hpp"

namespace holdwater::card {

/// Table and bars, without a title, a marked row and the words behind the last bar. `on`: the figures of a card that
/// has the columns, rows and cells of `food` by hold_places. In both systems thicknesses have two columns and baths two
/// rows, of which the second has no bar; where nobody reads, the one column has hours.
Staircase hold_steps(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food);

}  // namespace holdwater::card
