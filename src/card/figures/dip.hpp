// SPDX-License-Identifier: MIT
// The four rows of a fingertip dip: what the water may have been, and how soon the hottest of that burns.
#pragma once

#include "safety/sting.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::card {

struct Dip {
    int row = 0;            // of the four, from 1
    const char* key = "";   // of the word: "at-once", "by-one", "by-two", "not"
    safety::BathBand band;  // a warm hand in stirred water
    std::optional<units::Duration> burn;
};

/// From at once to not by a count of two; no row for a longer dip.
std::vector<Dip> dips();

/// "64–90", whole degrees outwards: the band may be a little wider, never narrower.
std::string span_of(const safety::BathBand& band, bool fahrenheit);

/// How many times later the slow end of cold hands is stung than that of warm ones, in the example of the facts, as it
/// is printed.
int cold_hand_later();

}  // namespace holdwater::card
