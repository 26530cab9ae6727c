// SPDX-License-Identifier: MIT
// Plan -> the deck of trip cards.
#pragma once

#include "card/content.hpp"
#include "plan/result/plan.hpp"
#include "words/words.hpp"

#include <string>
#include <vector>

namespace holdwater::card {

/// Keys of the trip cards in deck order; the names that --only takes.
const std::vector<std::string>& trip_cards();

/// All trip cards, or those named in `only` (keys of trip_cards()). Every card has its caution.
Deck trip_deck(const plan::Plan& plan, const words::Words& words, const std::string& stamp,
               const std::vector<std::string>& only = {});

}  // namespace holdwater::card
