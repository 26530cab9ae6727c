// SPDX-License-Identifier: MIT
// Histories of which everything is known: a trip with a box drawn from the spreads, simulated by heat::Bath, and
// the log that a cook of one habit or another would have written of it.
#pragma once

#include "answer/review/review.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace holdwater::support {

enum class Habit {
    card,            // "before" and "after" a top-up, as the Log card has it
    pairs,           // two readings at one moment, the second noted
    after_noted,     // only the reading after each top-up, noted
    after_unnoted,   // only the reading after each top-up, and no word of it
    hourly,          // a reading an hour, top-ups in rows of their own
    sparse_noted,    // a reading in three to six hours, top-ups in rows of their own
    sparse_unnoted,  // the same, and no word of any top-up
    two_rows,        // food in and food out
    hourly_gap,      // hourly and unnoted, and nobody awake for seven hours
};
inline constexpr int habits = 9;
const char* name_of(Habit habit);

struct MadeLog {
    std::string trip_text;
    std::string log_text;
    Habit habit = Habit::card;
    answer::Verdict truth = answer::Verdict::eat;
    double below_h = 0.0;  // true clock
    double growth = 0.0;   // log10, cautious start of the cells, along the true core and bath
    double spare = 0.0;    // K, by which the bath stayed above what the review must be able to see
    std::string what;      // for people
};

/// The same for the same seed.
MadeLog made_log(std::uint64_t seed, Habit habit);

}  // namespace holdwater::support
