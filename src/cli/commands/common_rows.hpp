// SPDX-License-Identifier: MIT
// The headings under which help lists the commands, and rows that several commands have.
#pragma once

#include "cli/line/option_row.hpp"
#include "cli/text/wrap.hpp"

#include <string>
#include <string_view>
#include <utility>

namespace holdwater::cli {

namespace headings {
inline constexpr std::string_view trip = "A trip, from its file";
inline constexpr std::string_view box = "A box";
inline constexpr std::string_view figure = "One figure";
inline constexpr std::string_view teaching = "To teach, and to look up";
inline constexpr std::string_view program = "About the program";
}  // namespace headings

/// Where the boiling point can be worked out: below the lowest shore, up to the end of the lowest layer of air.
inline constexpr Range altitudes{"-500 m", "11000 m", "1850 m", {}};

inline const OptionRow trip_row{
    .name = "TRIP", .help = "trip file", .required = true, .example = "trip.toml", .holds = Holds::trip_file};
inline const OptionRow json_row{.name = "--json", .help = "every number, not rounded, as JSON"};
inline const OptionRow chart_folder_row{
    .name = "--out", .value = "DIR", .help = "folder for the chart", .by_default = "out", .holds = Holds::folder};

/// A row whose default is worked out, such as a figure of the facts.
inline OptionRow with_default(OptionRow row, std::string text) {
    row.by_default = plain_spaces(std::move(text));
    return row;
}

/// A row that takes one of the sets of rules: their names are read from the facts, so not before the program runs.
inline OptionRow with_rules(OptionRow row) {
    row.choices = names_of<facts::Ruleset>();
    return row;
}

}  // namespace holdwater::cli
