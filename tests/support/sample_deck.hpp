// SPDX-License-Identifier: MIT
// An invented deck that uses every block the way real cards do: for tests of layout and drawing, never for a meal.
#pragma once

#include "card/content.hpp"

namespace holdwater::support {

/// Eight cards of a made-up trip. The numbers are plausible and nothing more.
card::Deck sample_deck();

}  // namespace holdwater::support
