// SPDX-License-Identifier: MIT
// What happens when, as the timeline and the log tell it.
#pragma once

#include "plan/result/plan.hpp"

#include <vector>

namespace holdwater::plan {

/// From the fire to the plates, in time order; what falls on one moment in the order in which it is done.
std::vector<Event> events_of(const Plan& plan);

}  // namespace holdwater::plan
