// SPDX-License-Identifier: MIT
// The two parts of the thermometer on Reading: what to pour while the bath is good, what to do when it was not.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// The mark, and when to read again once it reads that.
Thermometer::Section topped_up(const CardWriter& writer, const CardFigures& on);

/// Down to the floor what is left alone and when it is read again, and what asks for the fire at once, with how far to
/// scoop and how much to pour at a few readings. `brief`: in one system.
std::vector<Thermometer::Section> pours_by_reading(const CardWriter& writer, const CardFigures& on, bool brief);

/// Below the floor, by the time since the bath last read well: the one decision, for watched and unwatched. One row for
/// all readings that ask for the same, named by the lowest of them; the last stands for all below.
Thermometer::Section fallen_readings(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
