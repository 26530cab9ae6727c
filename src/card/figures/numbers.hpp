// SPDX-License-Identifier: MIT
// The figures of a trip's deck: made once, before its cards, and told beside them by `plan --explain`, `plan --json`
// and the basis sheet.
#pragma once

#include "card/figures/list.hpp"

#include <vector>

namespace holdwater::card {

/// Every figure that a card of the deck may print, and what the terminal says of the trip besides.
FigureList trip_figures(const Telling& telling);

/// Those of the Packing card alone and what the terminal says besides, of a plan that need not have a schedule.
FigureList kitchen_figures(const Telling& telling);

/// Every number that a card of the deck prints, first those that one acts on, in the order of the deck, then the
/// details.
std::vector<CardNumber> card_numbers(const Telling& telling);

}  // namespace holdwater::card
