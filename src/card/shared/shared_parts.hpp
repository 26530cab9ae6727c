// SPDX-License-Identifier: MIT
// Parts of the trip cards that the class deck has too. They look at no schedule: of the plan only at its trip, foods,
// floors and marks.
#pragma once

#include "card/shared/writer.hpp"

namespace holdwater::card {

/// The temperature of a whole food over the fire after a fall, with its time if it has one: the hottest core asked for,
/// "75 °C (167 °F) for 2 min".
Text full(const Telling& telling, const CardFigures& on);
/// Liver and shellfish are for nobody who is at risk, however hot: viruses.
bool none_at_risk(const plan::Plan& plan);
/// " for 3 min", from a figure that is there only where a time is asked for; else nothing.
Text for_hold(const Telling& telling, const CardFigures& on, std::string_view key, const Which& which);

/// A figure for a place of a wording; nothing, and the figure does not stand there, where the wording has no such
/// place.
Text where_asked(const Telling& telling, std::string_view wording, std::string_view place, const CardFigures& on,
                 std::string_view key, const Which& which);

/// A food's name as it stands among other words: in quotation marks where it begins with a number, which would be taken
/// for how many there are of it, or has a comma.
Text name_of(const Telling& telling, const trip::Food& food);
/// True if the Hold card has bars for it, for pieces of other thickness too.
bool has_bars(const plan::FoodPlan& food);

/// "Keep pieces apart and off the bottom.": how the food lies in the bath, by the trip.
Text contact_line(const Telling& telling);

/// Which rows the hold times meet, and what consumer advice asks instead; only where that is more.
/// `nth`: the food, from 1. `key` of the words: with {rows}, {whose}, {core}, {hold}.
Text advice_line(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food, int nth,
                 const std::string& key = "plan.advice-line");

/// The beeswax tell-tale, and who may not eat by less than a thermometer.
void add_wax(const CardWriter& writer, const CardFigures& on, bool poultry_or_fish, Card& card);

/// What stung a fingertip may have been, for a warm hand in stirred water, and how soon the hottest of that burns.
Table dip_table(const CardWriter& writer, const CardFigures& on);
/// The burn time of all rows of a dip, where it is one; else nothing.
Text burns_alike(const CardFigures& on);

}  // namespace holdwater::card
