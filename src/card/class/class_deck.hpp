// SPDX-License-Identifier: MIT
// The deck that an instructor hands out, for no trip: Hold for three baths, Reading for boxes of common litres, Full
// box, Mix, Without a thermometer, Box, If something goes wrong.
#pragma once

#include "card/class/class_frame.hpp"

namespace holdwater::card {

/// Keys of the class cards in deck order; the names that --only takes. "hold" stands for one card a shape.
const std::vector<std::string>& class_cards();

/// All class cards, or those named in `only`. Every card has its caution.
Deck class_deck(const ClassFrame& frame, const words::Words& words, const std::string& stamp,
                const std::vector<std::string>& only = {});

}  // namespace holdwater::card
