// SPDX-License-Identifier: MIT
// Many trips in one run: each in a process of its own, so that none can stop another or leave its memory behind.
#pragma once

#include "cli/exit.hpp"

#include <functional>
#include <string>
#include <vector>

namespace holdwater::cli {

/// Does `one` for each trip, so many at a time. What it says is kept and printed whole, in the order of the trips; at
/// the end a line tells how many came out how. A trip that brings the program down counts as our own fault and stops no
/// other. No thread may run when this is called.
Exit each_trip(const std::vector<std::string>& trips, int at_a_time,
               const std::function<Exit(const std::string&)>& one);

}  // namespace holdwater::cli
