// SPDX-License-Identifier: MIT
// Litre marks for this box, to be taped along a stick.
#pragma once

#include "card/figures/list.hpp"

#include <string>
#include <vector>

namespace holdwater::card {

/// Two strips: before the food is in, and with it in the water. A mark stands at (litres + food) / (length x width) of
/// the box's inside measures. Litres by the litre or finer, quarts where the trip prints US units alone.
std::vector<Strip> fill_strips(const FigureList& figures, const std::string& stamp);

}  // namespace holdwater::card
