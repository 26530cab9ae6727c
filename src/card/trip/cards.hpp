// SPDX-License-Identifier: MIT
// One function a card; deck.cpp lists them.
#pragma once

#include "card/shared/figures.hpp"

namespace holdwater::card {

Card plan_card(const CardWriter& hand);
Card fill_card(const CardWriter& hand);
Card hold_card(const CardWriter& hand);
Card top_up_card(const CardWriter& hand);
Card night_card(const CardWriter& hand);
Card touch_card(const CardWriter& hand);
Card limits_card(const CardWriter& hand);
Card log_card(const CardWriter& hand);
Card kitchen_card(const CardWriter& hand);

}  // namespace holdwater::card
