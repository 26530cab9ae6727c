// SPDX-License-Identifier: MIT
// The parts of Reading: when the bath is read again, what to pour, what to do when it was too cool.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// Down to the floor: when it is read again, from which reading on the fire is lit, and where to go below the floor.
std::vector<Thermometer::Section> good_readings(const CardWriter& writer, const CardFigures& on);

/// The same in short, for a card that sends to Reading.
std::vector<Thermometer::Section> short_readings(const CardWriter& writer, const CardFigures& on);

/// How far to scoop and how much to pour at a few readings, for every top-up alike. `brief`: in one system.
Table top_up_table(const CardWriter& writer, const CardFigures& on, bool brief);

/// Below the floor, by the time since the bath last read well: the one decision, for watched and unwatched. One row for
/// all readings that ask for the same, named by the lowest of them; the last stands for all below.
Thermometer::Section fallen_readings(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
