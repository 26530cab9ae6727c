// SPDX-License-Identifier: MIT
// Two boxes are two plans over one fire.
#pragma once

#include "plan/result/plan.hpp"
#include "trip/trip.hpp"

#include <vector>

namespace holdwater::plan {

/// The trip as each of its boxes sees it: its own foods, and its own share of the fire, so that both can be filled and
/// topped up at the same time. Whole pots where there are enough, by the litres of the boxes and at least one each; one
/// pot is shared, half of its water each. A trip with one box comes back as it is.
std::vector<trip::Trip> one_trip_a_box(const trip::Trip& trip);

/// One fire has one latest moment: each plan gets the earliest of all.
void share_latest_fire(std::vector<Plan>& plans);

}  // namespace holdwater::plan
