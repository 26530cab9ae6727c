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
    bool out_written = false;  // a row says so; else it is the last row
    bool known = true;         // false: nobody can tell from the notes how long it was in
};

struct Notes {
    std::vector<Stay> stays;  // one a food of the trip
    problem::Problems remarks;
};

/// "food in" and the like, for all foods or for those that the note names; "food out", "served" and the like likewise
/// (review_words.hpp). A food without a note goes in with the first row and stays to the last row. Where the moment of
/// going in is not written, or a note is unclear, `known` is false and it is warned of. Two times in, or out, for one
/// food are an error; "served" after "out" is none, and the first counts. Notes in one row are parted by semicolons.
Notes read_notes(const trip::Trip& trip, const trip::Log& log);

/// "top-up", "topped up", "swap", "after top-up" and the like, whatever follows.
bool says_poured(std::string_view note);
/// "before", "before top-up" and the like, as the Log card has it: read before the pour that follows.
bool says_before(std::string_view note);
/// That, or "nothing poured", "no top-up": nothing was poured since the last row that says so.
bool says_unpoured(std::string_view note);

}  // namespace holdwater::answer
