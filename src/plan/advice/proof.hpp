// SPDX-License-Identifier: MIT
// That no change within the equipment makes a trip hold.
#pragma once

#include "problem/problem.hpp"
#include "trip/trip.hpp"

namespace holdwater::plan {

/// Every change pulled to the end of its range, all together, and what still stands against it, with its numbers.
problem::Problem proof_of_none(const trip::Trip& trip);

}  // namespace holdwater::plan
