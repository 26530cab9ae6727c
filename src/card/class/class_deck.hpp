// SPDX-License-Identifier: MIT
// The deck that an instructor hands out: hold rulers for three baths, the ladder for common litres, parts to
// mix, Touch, Limits.
#pragma once

#include "card/class/class_frame.hpp"

namespace holdwater::card {

/// Keys of the class cards in deck order; the names that --only takes. "hold" stands for one card a bath.
const std::vector<std::string>& class_cards();

/// All class cards, or those named in `only`. Every card has its caution.
Deck class_deck(const ClassFrame& frame, const words::Words& words, const std::string& stamp,
                const std::vector<std::string>& only = {});

/// Water in the box that the ladder card has a column for.
const std::vector<units::Volume>& common_litres();

/// Parts of boiling to one part cold, so that the mixture likely comes out at a bath after the usual cooling on its
/// way; and how cool and hot it may be. Nothing: out of reach.
struct ClassMix {
    double parts = 0.0;
    units::Temperature low;
    units::Temperature high;
};
std::optional<ClassMix> class_mix(const ClassFrame& frame, units::Temperature bath, bool with_ice_water);
/// Parts as cards and exercises print them: to a tenth, up, since less boiling water is the cooler side.
units::Figure parts_to_mix(double parts);

}  // namespace holdwater::card
