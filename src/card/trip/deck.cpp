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

Text CardWriter::ref(std::string_view card) const {
    int number = 0;
    for (const TripCard& one : deck_order) {
        number += one.belongs(*this) ? 1 : 0;
        if (one.key == card && one.belongs(*this)) {
            const std::string key(card);
            return words.text("deck.ref", {{"number", number}, {"name", words.text(key + ".name")}});
        }
    }
    throw std::logic_error("a card refers to \"" + std::string(card) + "\", which this deck has not");
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
        if (!maker.belongs(writer)) {
            continue;
        }
        ++number;
        if (!only.empty() && std::find(only.begin(), only.end(), maker.key) == only.end()) {
            continue;
        }
        Card card = maker.make(writer);
        card.key = maker.key;
        card.name = words.text(card.key + ".name");
        card.question = words.text(card.key + ".question");
        card.number = number;
        if (!card.cautioned()) {
            throw std::logic_error("card without its caution: " + card.key);
        }
        deck.cards.push_back(std::move(card));
    }
    return deck;
}

}  // namespace holdwater::card
