// SPDX-License-Identifier: MIT
// What a small format does without.
#pragma once

#include "card/content.hpp"
#include "layout/layout.hpp"

namespace holdwater::layout {

/// Takes out of the deck what has no room in the format, and says in the foot of every other card which cards are gone:
/// first drawings that the card's words do without (the bar of the day, the curve, a ruler with the notes on its use),
/// then whole cards; never a row, a caution or a card's other words. A note for each, card-cut and card-left-out.
/// Error: nothing-fits, if no card is left.
problem::Problems leave_out(card::Deck& deck, const Format& format, const Measure& measure, const Phrases& phrases);

}  // namespace holdwater::layout
