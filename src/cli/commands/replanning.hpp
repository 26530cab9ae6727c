// SPDX-License-Identifier: MIT
// `plan TRIP --now ...`: the rows of it and what they come to.
#pragma once

#include "cli/exit.hpp"
#include "cli/line/options.hpp"
#include "units/local_time.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace holdwater::cli {

/// As it was given; clock times are of the trip's days.
struct FoundGiven {
    using Moment = std::variant<units::ClockTime, units::LocalTime>;
    Moment now;
    std::string reading_text;  // as it was written
    units::Temperature reading;
    std::optional<Moment> food_in;
    std::optional<units::Length> level;
    std::optional<units::Temperature> core;
};

std::vector<OptionRow> replan_rows();

/// Nothing where no row of it was given; faults are kept in the options.
std::optional<FoundGiven> read_found(Options& options);

Exit show_replan(const std::string& trip_path, const FoundGiven& given, bool json);

}  // namespace holdwater::cli
