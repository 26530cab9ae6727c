// SPDX-License-Identifier: MIT
// What a cook could change about a trip, from the cheapest to the dearest.
#pragma once

#include "trip/trip.hpp"

#include <functional>
#include <string>
#include <vector>

namespace holdwater::plan {

struct Change {
    enum class Sort { later, target, tolerance, prewarmed, off_the_floor, more_water, thinner, more_pots, better_box };
    Sort sort = Sort::later;
    std::string advice;  // as it would stand in the trip file, then in words
    std::function<void(trip::Trip&)> apply;
};

/// Sorts in the order of their cost to the cook; within a sort from the smallest change to the largest.
std::vector<Change> changes_for(const trip::Trip& trip);

}  // namespace holdwater::plan
