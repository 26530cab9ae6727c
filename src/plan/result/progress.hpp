// SPDX-License-Identifier: MIT
// How far the search for a plan is: for somebody who waits.
#pragma once

#include <cstddef>

namespace holdwater::plan {

/// Trips that were planned or refused since the program began, each change, start and fill that was tried counted.
std::size_t trips_tried();
void count_trip();

}  // namespace holdwater::plan
