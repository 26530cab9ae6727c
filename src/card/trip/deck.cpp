// SPDX-License-Identifier: MIT
#include "card/trip/deck.hpp"

#include "card/figures/numbers.hpp"
#include "card/shared/keys.hpp"
#include "card/trip/cards.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdwater::card {
const std::vector<std::string>& trip_cards() {
    static const std::vector<std::string> keys = keys_of(deck_order);
    return keys;
}

Deck trip_deck(const plan::Plan& plan, const words::Words& words, const std::string& stamp,
               const std::vector<std::string>& only) {
    FigureList figures = trip_figures({plan, words});
    const CardWriter writer{{plan, words}, figures};
    Deck deck;
    deck.title = plan.trip->name;
    deck.stamp = stamp;
    deck.language = plan.trip->language;
    deck.footer = words.text("deck.footer");
    int number = 0;
    for (const TripCard& maker : deck_order) {
        ++number;
        if (!only.empty() && std::find(only.begin(), only.end(), maker.key) == only.end()) {
            continue;
        }
        Card card = maker.make(writer);
        card.key = maker.key;
        card.name = words.text(card.key + ".name");
        card.question = words.text(card.key + ".question");
        card.number = number;
        if (card.cautions.empty()) {
            throw std::logic_error("card without its caution: " + card.key);
        }
        deck.cards.push_back(std::move(card));
    }
    return deck;
}

}  // namespace holdwater::card
