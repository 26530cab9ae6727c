// SPDX-License-Identifier: MIT
// The cards of a trip, one function each, and their order in the deck.
#pragma once

#include "card/shared/shared_parts.hpp"
#include "card/shared/writer.hpp"
#include "plan/result/overnight.hpp"

namespace holdwater::card {

Card one_card(const CardWriter& writer);
Card plan_card(const CardWriter& writer);
Card fill_card(const CardWriter& writer);
Card reading_card(const CardWriter& writer);
Card night_card(const CardWriter& writer);
Card hold_card(const CardWriter& writer);
Card touch_card(const CardWriter& writer);
Card trouble_card(const CardWriter& writer);
Card log_card(const CardWriter& writer);
Card packing_card(const CardWriter& writer);

// Which decks have a card.
inline bool always(const Telling&) {
    return true;
}
inline bool where_read(const Telling& telling) {
    return telling.reads();
}
inline bool where_slept(const Telling& telling) {
    return overnight(telling.plan);
}

/// Not where nothing is known but of the trip's own piece, whose time stands on Plan.
inline bool where_bars(const Telling& telling) {
    return std::any_of(telling.plan.foods.begin(), telling.plan.foods.end(), has_bars);
}

struct TripCard {
    /// Its section in the wording, which gives its name and question; its name for --only.
    const char* key;
    Card (*make)(const CardWriter&);
    bool (*belongs)(const Telling&);
};

inline constexpr TripCard deck_order[] = {{"one", one_card, always},          {"plan", plan_card, always},
                                          {"fill", fill_card, always},        {"reading", reading_card, where_read},
                                          {"night", night_card, where_slept}, {"hold", hold_card, where_bars},
                                          {"touch", touch_card, always},      {"trouble", trouble_card, always},
                                          {"log", log_card, always},          {"packing", packing_card, always}};

}  // namespace holdwater::card
