// SPDX-License-Identifier: MIT
// The notes of a log: when each food went in and came out, and where water was poured. Inside answer/ only.
#pragma once

#include "problem/problem.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"

#include <string_view>
#include <vector>

namespace holdwater::answer {

struct Stay {
    units::Duration in;
    units::Duration out;
};

struct Notes {
    std::vector<Stay> stays;  // one a food of the trip
    problem::Problems remarks;
};

/// "food in" or "in", for all foods or, with ": NAME", for one; "out" or "served" likewise. A food without a note goes
/// in with the first row, which is warned of, and stays to the last row. Two times in for one food are an error; of
/// several outs the last counts. Several notes in one row are parted by semicolons.
Notes read_notes(const trip::Trip& trip, const trip::Log& log);

/// "top-up", "topped up", "swap" and the like, whatever follows.
bool says_poured(std::string_view note);

}  // namespace holdwater::answer
