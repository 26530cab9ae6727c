// SPDX-License-Identifier: MIT
// What the decisions say of a history of which everything is known.
#pragma once

#include "answer/review/review.hpp"
#include "heat/bath.hpp"
#include "safety/standard.hpp"
#include "trip/trip.hpp"

namespace holdwater::support {

struct Truth {
    answer::Verdict verdict = answer::Verdict::eat;
    double below_h = 0.0;  // the clock of the decisions
    double growth = 0.0;   // log10, cautious start of the cells, along the true core and bath
    double spare = 0.0;    // K, by which the bath stayed above the higher of its floors
};

/// Of the first food of a trip, in from 0 up to now in a bath that has recorded all of it.
Truth truth_of(const trip::Trip& trip, const safety::Standard& standard, const heat::Bath& bath);

}  // namespace holdwater::support
