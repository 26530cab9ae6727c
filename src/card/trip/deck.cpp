// SPDX-License-Identifier: MIT
#include "card/trip/deck.hpp"

#include <algorithm>
#include <stdexcept>

#include "card/trip/cards.hpp"
#include "card/shared/keys.hpp"
#include "card/shared/decimal_mark.hpp"

namespace holdwater::card {
namespace {

struct Maker {
    const char* key;
    Card (*make)(const CardWriter&);
};

constexpr Maker makers[] = {{"plan", plan_card},     {"fill", fill_card},   {"hold", hold_card},
                            {"topup", top_up_card},  {"night", night_card}, {"touch", touch_card},
                            {"limits", limits_card}, {"log", log_card},     {"kitchen", kitchen_card}};

}  // namespace

const std::vector<std::string>& trip_cards() {
    static const std::vector<std::string> keys = keys_of(makers);
    return keys;
}

Deck trip_deck(const plan::Plan& plan, const words::Words& words, const std::string& stamp,
               const std::vector<std::string>& only) {
    const CardWriter hand{plan, words};
    Deck deck;
    deck.title = plan.trip->name;
    deck.stamp = stamp;
    deck.language = plan.trip->language;
    deck.footer = words.text("deck.footer");
    int number = 0;
    for (const Maker& maker : makers) {
        ++number;
        if (!only.empty() && std::find(only.begin(), only.end(), maker.key) == only.end()) {
            continue;
        }
        Card card = maker.make(hand);
        card.key = maker.key;
        card.name = words.text(card.key + ".name");
        card.question = words.text(card.key + ".question");
        card.number = number;
        if (card.cautions.empty()) {
            throw std::logic_error("card without its caution: " + card.key);
        }
        deck.cards.push_back(std::move(card));
    }
    set_decimal_mark(deck, words.decimal_mark());
    return deck;
}

}  // namespace holdwater::card
