// SPDX-License-Identifier: MIT
// Parts of the trip cards that the class deck has too. They look at no schedule: of the plan only at its trip, foods,
// floors and marks.
#pragma once

#include "card/shared/figures.hpp"

namespace holdwater::card {

/// A tick each 5 mm, a label each 10. `mark_own`: the tick of the food's own thickness stands out.
Ruler ruler_of(const CardWriter& writer, const plan::FoodPlan& food, const plan::HoldRuler& ruler,
               bool mark_own = true);

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
