// SPDX-License-Identifier: MIT
// The day of the Plan card, line by line.
#pragma once

#include "card/shared/writer.hpp"

namespace holdwater::card {

/// From the fire to the plates, in time order, each line with its clock time: fill, foods in and out, top-ups, sear,
/// finish over the fire, serving.
Steps timeline_of(const CardWriter& writer);

/// "6.4 L, 17:09 2.1 L": the rounds of the fill, each but the first with its time. `on` has acts and rounds.
Text rounds_text(const CardWriter& writer, const CardFigures& on);

/// What is done where the guests are late: until when the food may wait in the box, and on what condition.
Text late_text(const CardWriter& writer, const CardFigures& on);

/// Whether a line of it says what it reads once the food has taken its heat, and where to go if it reads less; not
/// where a top-up comes first.
bool tells_settled(const CardWriter& writer);

/// Until when the fire may be lit, in the words that stand in its act.
Text latest_text(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
