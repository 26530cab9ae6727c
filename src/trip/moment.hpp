// SPDX-License-Identifier: MIT
// Moments of local time in trip files and logs.
#pragma once

#include "trip/report.hpp"
#include "units/local_time.hpp"

#include <toml++/toml.h>

#include <optional>
#include <string_view>

namespace holdwater::trip {

/// A TOML date-time as local time; one with an offset or a year that cannot be meant is reported under `label`.
std::optional<units::LocalTime> moment_of(const toml::date_time& written, std::string_view label, problem::Place place,
                                          Report& report);

/// "2027-10-15T16:00" or "2027-10-15 16:00:30"; nothing if it is anything else or no such day or time exists.
std::optional<units::LocalTime> parse_moment(std::string_view text);

}  // namespace holdwater::trip
