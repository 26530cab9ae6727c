// SPDX-License-Identifier: MIT
// Cards are made with decimal points throughout; the mark of the language is set once, at the end, so that no number can
// be missed.
#pragma once

#include "card/content.hpp"

#include <string>

namespace holdwater::card {

/// Every point between two digits becomes the mark: "3.5 L" with "," is "3,5 L".
void set_decimal_mark(Text& text, const std::string& mark);
void set_decimal_mark(Block& block, const std::string& mark);
void set_decimal_mark(Strip& strip, const std::string& mark);
/// Of all cards; the title is the user's and stays.
void set_decimal_mark(Deck& deck, const std::string& mark);

}  // namespace holdwater::card
