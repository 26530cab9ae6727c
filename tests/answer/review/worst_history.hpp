// SPDX-License-Identifier: MIT
// The worst that a written log leaves open: histories made to tell exactly its rows, by a box, food and thermometer
// that turn out within their spreads, with water poured just before each reading. Nothing here asks the review.
#pragma once

#include "answer/review/true_verdict.hpp"
#include "heat/bath.hpp"
#include "safety/standard.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"

#include <optional>

namespace holdwater::support {

struct ToldHistory {
    heat::Bath bath;
    double bias = 0.0;  // K, reading less bath, the same in all rows
    Truth truth;
};

/// The most severe of those found for a trip of one food that goes in with the first row; nothing where rows bind the
/// bath between them by their words ("before", "nothing poured", two readings at one moment), or where no box within
/// its spread falls as fast as the rows say.
std::optional<ToldHistory> worst_history(const trip::Trip& trip, const safety::Standard& standard,
                                         const trip::Log& log);

/// The largest difference [K] between what a row says and what its thermometer showed.
double untold(const ToldHistory& history, const trip::Log& log);

}  // namespace holdwater::support
