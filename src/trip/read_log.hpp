// SPDX-License-Identifier: MIT
// A log of readings (CSV): of a box test or of a trip. The header names columns and units: time_min, time_hhmm or
// time; bath_c or bath_f; and, where kept, outside_c|f, core_c|f and note.
#pragma once

#include "problem/problem.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace holdwater::trip {

struct LogRow {
    units::Duration at;                      // since the log's zero: minute 0 of time_min, else the first row
    std::optional<units::Temperature> bath;  // a row may be only a note
    std::optional<units::Temperature> outside;
    std::optional<units::Temperature> core;
    std::string note;
    problem::Place place;
};

/// A stretch without a bath reading, much longer than the log's usual step. Nobody knows what happened in it.
struct LogGap {
    units::Duration from;
    units::Duration to;
    problem::Place place;  // of the row that ends it
};

struct Log {
    /// What the watch showed at the log's zero; nothing for time_min, a clock time for time_hhmm.
    std::variant<std::monostate, units::ClockTime, units::LocalTime> zero;
    std::vector<LogRow> rows;  // in time order; two rows at one moment are a jump (before and after a top-up)
    std::vector<LogGap> gaps;

    /// Mean of the outside readings over time; nothing if there are none.
    std::optional<units::Temperature> mean_outside() const;
};

/// Every fault at once, with file:line:column. A gap is a warning, "log-gap", with a good value.
problem::Result<Log> read_log(std::string_view text, const std::string& file_name);

}  // namespace holdwater::trip
