// SPDX-License-Identifier: MIT
// That no change within the equipment makes a trip hold.
#pragma once

#include "problem/problem.hpp"
#include "trip/trip.hpp"

namespace holdwater::plan {

/// Every change pulled to the end of its range, all together, and what still stands against it, with its numbers.
problem::Problem proof_of_none(const trip::Trip& trip);

/// What is said of a change that was found by a search that stopped at its bound.
inline constexpr const char* stopped_before_the_least =
    "the search for it stopped at its bound: a smaller change may be enough";

}  // namespace holdwater::plan
