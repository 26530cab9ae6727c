// SPDX-License-Identifier: MIT
// The cards of the class deck, one function a sort, and their order. Figures come from the list that is made before
// them, card/figures/class_figures; a card works out and rounds none.
#pragma once

#include "card/class/class_frame.hpp"
#include "card/shared/writer.hpp"

#include <string_view>
#include <vector>

namespace holdwater::card {

/// What a class card is written from.
struct ClassWriter {
    const ClassFrame& frame;
    CardWriter writer;

    const words::Words& words() const { return writer.words; }
    CardFigures on(std::string_view card) const { return writer.on(card); }
    /// "card 5, Mix": another card of the deck; std::logic_error where it has none of that key.
    Text ref(std::string_view card) const;
};

/// One a shape: a table for the baths, thickness steps behind it.
std::vector<Card> class_hold_cards(const ClassWriter& writer);
std::vector<Card> class_reading_card(const ClassWriter& writer);
std::vector<Card> class_full_card(const ClassWriter& writer);
std::vector<Card> class_mix_card(const ClassWriter& writer);
std::vector<Card> class_touch_card(const ClassWriter& writer);
std::vector<Card> class_box_card(const ClassWriter& writer);
std::vector<Card> class_trouble_card(const ClassWriter& writer);

struct ClassCard {
    const char* key;      // its name for --only
    const char* section;  // of the words, for its name and question
    std::vector<Card> (*make)(const ClassWriter&);
    bool one_a_shape = false;
};

inline constexpr ClassCard class_order[] = {
    {"hold", "hold", class_hold_cards, true},  {"reading", "reading", class_reading_card},
    {"full", "class-full", class_full_card},   {"mix", "class-mix", class_mix_card},
    {"touch", "touch", class_touch_card},      {"box", "class-box", class_box_card},
    {"trouble", "trouble", class_trouble_card}};

}  // namespace holdwater::card
