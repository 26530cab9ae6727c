// SPDX-License-Identifier: MIT
// The numbers that a cook acts on, each with the quantile it is, how it was rounded and where its rule comes from: what
// `plan --explain` and `plan --json` show, so that every figure of a card can be traced.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/shared/figures.hpp"

namespace holdwater::card {

struct CardNumber {
    std::string card;      // key of the card, "night"
    std::string name;      // "longest_alone_h"
    double value = 0.0;    // unrounded, in the unit that ends the name
    std::string printed;   // as it stands on the card
    std::string quantile;  // "95 of 100 scenarios", "rule", "chosen"
    std::string rounding;  // "down to 15 min"
    std::string source;    // key of a source, of a figure, or what it was worked out from
    std::optional<double> error;  // of the value, from drawing scenarios at all; where it was worked out
};

/// In the order of the deck.
std::vector<CardNumber> card_numbers(const CardWriter& hand);

/// Parts of it, in numbers_around.cpp.
void add_touch_numbers(const CardWriter& hand, std::vector<CardNumber>& numbers);
void add_kitchen_numbers(const CardWriter& hand, std::vector<CardNumber>& numbers);

}  // namespace holdwater::card
