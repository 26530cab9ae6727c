// SPDX-License-Identifier: MIT
// Reads "85 mm", "3 1/4 in", "63 C", "2 K": a number, then its unit. Knows nothing of files; the readers add places.
#pragma once

#include "problem/problem.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <string_view>

namespace holdwater::units {

/// Q is one of the types of quantity.hpp that can be written in a trip file. Accepts a decimal point (never a comma),
/// a fraction "1/2", a mixed number "3 1/4", a degree sign before C and F, white space around, and the units of that
/// quantity; the locale is not asked. Errors: number-unreadable, unit-missing (names the units that would do),
/// unit-unknown (names the nearest), unit-of-another-kind (says what it measures instead).
template <class Q>
problem::Result<Q> parse(std::string_view text);

/// "08:00" to "23:59", also "8:00". Error: clock-unreadable.
problem::Result<ClockTime> parse_clock(std::string_view text);

}  // namespace holdwater::units
