// SPDX-License-Identifier: MIT
// What a card is written from: the plan and the words, and its figures, made beforehand. A card decides which of them
// stands where; it works out and rounds none.
#pragma once

#include "card/content.hpp"
#include "card/figures/list.hpp"

#include <string_view>

namespace holdwater::card {

struct CardWriter : Telling {
    /// A figure that a card takes from it is noted as standing on that card.
    FigureList& figures;

    CardFigures on(std::string_view card) const { return figures.on(card); }
    /// "card 4, Reading": another card of the trip's deck; std::logic_error where this deck has none of that key.
    Text ref(std::string_view card) const;
};

}  // namespace holdwater::card
