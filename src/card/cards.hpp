// SPDX-License-Identifier: MIT
// One function a card; deck.cpp lists them.
#pragma once

#include "card/figures.hpp"

namespace holdwater::card {

Card plan_card(const Hand& hand);
Card fill_card(const Hand& hand);
Card hold_card(const Hand& hand);
Card top_up_card(const Hand& hand);
Card night_card(const Hand& hand);
Card touch_card(const Hand& hand);
Card limits_card(const Hand& hand);
Card log_card(const Hand& hand);
Card kitchen_card(const Hand& hand);

}  // namespace holdwater::card
