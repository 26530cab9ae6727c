// SPDX-License-Identifier: MIT
#pragma once

#include "units/local_time.hpp"

namespace holdwater::cli {

/// What the clock of this machine shows; with SOURCE_DATE_EPOCH that moment, in UTC, so that a run can be had again.
units::LocalTime clock_now();

}  // namespace holdwater::cli
