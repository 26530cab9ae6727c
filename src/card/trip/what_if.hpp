// SPDX-License-Identifier: MIT
// The what-if questions of a trip as lines for cards: what to do about each on Night, what it means if it was not done
// on Limits. Nothing where the trip asks nothing; a deck that goes by the clock alone has on Limits what a late pour
// means.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// Under a heading, ready to stand at the end of a card.
Blocks what_ifs_of_night(const CardWriter& writer);
Blocks what_ifs_of_limits(const CardWriter& writer);

}  // namespace holdwater::card
