// SPDX-License-Identifier: MIT
// Trips that somebody might plan, drawn at random, so that a test sees what no author of demos thought of.
#pragma once

#include "trip/trip.hpp"

#include <cstdint>
#include <string>

namespace holdwater::support {

/// A plausible trip file: 2 to 40 people, one to three foods of any kind and shape, a box of 9 to 70 litres, any rules,
/// units and language, by day or over a night. Another for each number, the same for the same. It reads without an
/// error; whether it can be planned is another matter.
std::string random_trip_text(std::uint64_t number);

/// What somebody might try first, sensible or not: 2 to 40 people, any kind of food that the program knows, a box of 9
/// to 70 litres, pots of 3 to 10 litres, summer to -15 C, 0 to 3,200 m, all rules, at risk, no thermometer, 4 to 20 h.
std::string wide_trip_text(std::uint64_t number);

/// The same, read. Throws with the first fault if it does not read.
trip::Trip random_trip(std::uint64_t number);
trip::Trip wide_trip(std::uint64_t number);

}  // namespace holdwater::support
