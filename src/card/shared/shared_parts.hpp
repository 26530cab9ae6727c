// SPDX-License-Identifier: MIT
// Parts of the trip cards that the class deck has too. They look at no schedule: of the plan only at its trip, foods,
// floors and marks.
#pragma once

#include "card/shared/figures.hpp"

namespace holdwater::card {

/// A tick each 5 mm, a label each 10, for this food and shape in a bath that never reads less. `mark_own`: the tick of
/// the food's own thickness stands out.
Ruler ruler_of(const CardWriter& writer, const plan::FoodPlan& food, units::Temperature bath, bool mark_own = true);

/// The hold time that a deck prints for the trip's own piece: in the lowest bath of its table in which that is over
/// within the trip, since just at the target it takes days.
struct OwnHold {
    units::Temperature bath;              // never read less
    std::optional<units::Duration> time;  // since food in; nothing: in none of these baths
    bool any_piece = true;                // false: known of this piece in this plan's bath alone
};
OwnHold own_hold(const CardWriter& writer, const plan::FoodPlan& food);

/// Which rows the hold times meet, and what consumer advice asks instead; only where that is more.
/// `key` of the words: with {rows}, {whose}, {core}, {hold}.
Text advice_line(const CardWriter& writer, const plan::FoodPlan& food, const std::string& key = "plan.advice-line");

/// What to do after the bath was below its floor, by the rules of the trip.
Table fell_below(const CardWriter& writer);
/// The bath in which germs grow by a log sooner than those rows say; nothing where there is none.
std::optional<Note> cold_bath_line(const CardWriter& writer);

/// The beeswax tell-tale, and who may not eat by less than a thermometer.
void add_wax(const CardWriter& writer, bool poultry_or_fish, Card& card);

/// The fingertip, and why it proves little.
void add_hand(const CardWriter& writer, Card& card);

}  // namespace holdwater::card
