// SPDX-License-Identifier: MIT
// The four rows of a fingertip dip: what the water may have been, and how soon the hottest of that burns.
#pragma once

#include "safety/sting.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <vector>

namespace holdwater::card {

struct Dip {
    const char* key = "";   // of the word: "at-once", "by-one", "by-two", "not"
    safety::BathBand band;  // a warm hand in stirred water
    std::optional<units::Duration> burn;
};

/// From at once to not by a count of two; no row for a longer dip.
std::vector<Dip> dips();

}  // namespace holdwater::card
