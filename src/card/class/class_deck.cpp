// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"

#include "card/class/class_parts.hpp"
#include "card/figures/class_figures.hpp"
#include "card/shared/keys.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdwater::card {

const std::vector<std::string>& class_cards() {
    static const std::vector<std::string> keys = keys_of(class_order);
    return keys;
}

Text ClassWriter::ref(std::string_view card) const {
    int number = 0;
    for (const ClassCard& one : class_order) {
        if (one.key == card) {
            const std::string section(one.section);
            return words().text("deck.ref", {{"number", number + 1}, {"name", words().text(section + ".name")}});
        }
        number += one.one_a_shape ? static_cast<int>(frame.plan().foods.size()) : 1;
    }
    throw std::logic_error("a card refers to \"" + std::string(card) + "\", which the class deck has not");
}

Deck class_deck(const ClassFrame& frame, const words::Words& words, const std::string& stamp,
                const std::vector<std::string>& only) {
    FigureList figures = class_figures(frame, words);
    const ClassWriter writer{frame, {{frame.plan(), words}, figures}};
    Deck deck;
    deck.title = frame.trip().name;
    deck.stamp = stamp;
    deck.language = frame.trip().language;
    deck.footer = words.text("deck.footer");
    int number = 0;
    for (const ClassCard& maker : class_order) {
        const bool wanted = only.empty() || std::find(only.begin(), only.end(), maker.key) != only.end();
        for (Card& card : maker.make(writer)) {
            const std::string section(maker.section);
            card.key = maker.key;
            card.name = words.text(section + ".name");
            card.question = words.text(section + ".question");
            card.number = ++number;
            if (!card.cautioned()) {
                throw std::logic_error("card without its caution: " + card.key);
            }
            if (wanted) {
                deck.cards.push_back(std::move(card));
            }
        }
    }
    return deck;
}

}  // namespace holdwater::card
