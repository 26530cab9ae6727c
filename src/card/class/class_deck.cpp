// SPDX-License-Identifier: MIT
#include "card/class/class_deck.hpp"

#include "answer/water/mix.hpp"
#include "card/class/class_parts.hpp"
#include "card/shared/keys.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdwater::card {
namespace {

struct Maker {
    const char* key;
    std::vector<Card> (*make)(const ClassFrame&, const words::Words&);
};

constexpr Maker makers[] = {{"hold", class_hold_cards},
                            {"ladder", class_ladder_card},
                            {"mix", class_mix_card},
                            {"touch", class_touch_card},
                            {"limits", class_limits_card}};

}  // namespace

const std::vector<std::string>& class_cards() {
    static const std::vector<std::string> keys = keys_of(makers);
    return keys;
}

const std::vector<units::Volume>& common_litres() {
    static const std::vector<units::Volume> litres{units::litres(20), units::litres(30), units::litres(40)};
    return litres;
}

units::Figure parts_to_mix(double parts) {
    return units::figure(parts, 0.1, units::Toward::up);
}

std::optional<ClassMix> class_mix(const ClassFrame& frame, units::Temperature bath, bool with_ice_water) {
    answer::MixQuestion question{bath, frame.boiling(), facts::facts().temperature("class.cold-water"),
                                 answer::Measure::volume};
    if (with_ice_water) {
        question.cold = answer::Frozen::slush;
    }
    // What a mixture loses hardly changes with its aim, so a few steps find the aim that likely comes out right.
    constexpr int steps = 6;
    std::optional<ClassMix> found;
    for (int i = 0; i < steps; ++i) {
        const auto answer = answer::mix(question);
        if (!answer) {
            return std::nullopt;
        }
        found = ClassMix{answer->hot_parts, answer->mixed.low, answer->mixed.high};
        question.target = question.target + (bath - answer->mixed.likely);
    }
    return found;
}

Deck class_deck(const ClassFrame& frame, const words::Words& words, const std::string& stamp,
                const std::vector<std::string>& only) {
    Deck deck;
    deck.title = frame.trip().name;
    deck.stamp = stamp;
    deck.language = frame.trip().language;
    deck.footer = words.text("deck.footer");
    int number = 0;
    for (const Maker& maker : makers) {
        const bool wanted = only.empty() || std::find(only.begin(), only.end(), maker.key) != only.end();
        for (Card& card : maker.make(frame, words)) {
            ++number;
            card.key = maker.key;
            card.number = number;
            if (card.cautions.empty()) {
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
