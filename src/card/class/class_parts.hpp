// SPDX-License-Identifier: MIT
// The cards of the class deck, one function a sort; class_deck.cpp lists them.
#pragma once

#include "card/class/class_frame.hpp"

namespace holdwater::card {

/// One card a bath, a ruler a face.
std::vector<Card> class_hold_cards(const ClassFrame& frame, const words::Words& words);
std::vector<Card> class_ladder_card(const ClassFrame& frame, const words::Words& words);
std::vector<Card> class_mix_card(const ClassFrame& frame, const words::Words& words);
std::vector<Card> class_touch_card(const ClassFrame& frame, const words::Words& words);
std::vector<Card> class_limits_card(const ClassFrame& frame, const words::Words& words);

}  // namespace holdwater::card
