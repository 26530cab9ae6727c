// SPDX-License-Identifier: MIT
// The cards of a trip, one function each, and their order in the deck.
#pragma once

#include "card/shared/writer.hpp"

namespace holdwater::card {

Card plan_card(const CardWriter& writer);
Card fill_card(const CardWriter& writer);
Card hold_card(const CardWriter& writer);
Card top_up_card(const CardWriter& writer);
Card night_card(const CardWriter& writer);
Card touch_card(const CardWriter& writer);
Card limits_card(const CardWriter& writer);
Card log_card(const CardWriter& writer);
Card kitchen_card(const CardWriter& writer);

struct TripCard {
    /// Its section in the wording, which gives its name and question; its name for --only.
    const char* key;
    Card (*make)(const CardWriter&);
};

inline constexpr TripCard deck_order[] = {{"plan", plan_card},     {"fill", fill_card},   {"hold", hold_card},
                                          {"topup", top_up_card},  {"night", night_card}, {"touch", touch_card},
                                          {"limits", limits_card}, {"log", log_card},     {"kitchen", kitchen_card}};

}  // namespace holdwater::card
