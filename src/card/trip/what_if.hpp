// SPDX-License-Identifier: MIT
// The what-if questions of a trip as lines for a card. Nothing where the trip asks nothing; a deck that goes by the
// clock alone has only what a late pour means.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// Under a heading, ready to stand at the end of a card: for each question what to do, then what it means if it was not
/// done.
Blocks what_ifs_of(const CardWriter& writer);

}  // namespace holdwater::card
