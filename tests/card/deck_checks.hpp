// SPDX-License-Identifier: MIT
// What holds of every deck, of trips of this tree and of random ones alike. Each checks by itself.
#pragma once

#include "card/content.hpp"
#include "plan/result/plan.hpp"

#include <string>

namespace holdwater::support {

/// A card whose act needs a caution has it once, in a box where the act stands.
void check_warnings(const card::Card& card);

/// "card 4, Reading" names a card of this deck by its number; `card_word` in the language of the deck.
void check_references(const card::Deck& deck, const std::string& card_word);

/// Every act has its time on Plan; of a deck in English.
void check_acts(const plan::Plan& planned, const card::Deck& deck);

/// What has one name is not called by another, in the language of the deck.
void check_names(const card::Deck& deck, const std::string& language);

}  // namespace holdwater::support
