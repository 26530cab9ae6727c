// SPDX-License-Identifier: MIT
// The cells of a log: temperatures, and times that only go forward.
#pragma once

#include "trip/csv.hpp"
#include "trip/ranges.hpp"
#include "trip/report.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string_view>
#include <variant>

namespace holdwater::trip {

enum class TimeKind { minutes, clock, moment };

/// An empty cell is nothing; a wrong one is reported and nothing.
std::optional<units::Temperature> read_temperature_cell(const CsvCell& cell, int line, bool fahrenheit,
                                                        std::string_view label, const Range& range, Report& report);

/// Reads the times of a log row by row and keeps them in order.
class LogClock {
  public:
    LogClock(TimeKind kind, Report& report) : kind_(kind), report_(report) {}

    /// Time since the log's zero. A clock time lower than the one before is the next day's, if that is no more than
    /// half a day on; two rows may share a moment (before and after a top-up), three may not.
    std::optional<units::Duration> read(const CsvCell& cell, int line);
    std::variant<std::monostate, units::ClockTime, units::LocalTime> zero() const { return zero_; }

  private:
    std::optional<double> seconds_of(const CsvCell& cell, problem::Place place);

    TimeKind kind_;
    Report& report_;
    std::variant<std::monostate, units::ClockTime, units::LocalTime> zero_;
    std::optional<double> last_;  // seconds since zero
    int at_last_ = 0;             // rows at that moment
};

}  // namespace holdwater::trip
