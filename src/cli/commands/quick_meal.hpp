// SPDX-License-Identifier: MIT
// One meal of which only a few things are said: on a line (`quick`) or in answers (`new`). The rest is cautious, by
// layouts/trips/quick.toml.
#pragma once

#include "cli/files/printing.hpp"
#include "cli/line/options.hpp"
#include "facts/facts.hpp"
#include "trip/form.hpp"
#include "units/local_time.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace holdwater::cli {

/// A value of the line, as it stands in the file.
struct SaidValue {
    const OptionRow* row = nullptr;
    std::string_view table;
    std::string_view key;
    std::string value;
};

/// A clock, or a date and time.
using QuickTime = std::variant<units::ClockTime, units::LocalTime>;

struct QuickMeal {
    std::string path;
    std::vector<SaidValue> said;
    const facts::FoodKind* kind = nullptr;
    facts::Shape shape = facts::Shape::slab;
    units::Length thickness;
    int pieces = 1;
    units::Volume water;
    std::optional<units::Mass> mass;
    QuickTime serve;
    std::optional<QuickTime> from;
    PrintingOptions printing;

    bool says(const OptionRow& row) const {
        return std::any_of(said.begin(), said.end(), [&](const SaidValue& one) { return one.row == &row; });
    }
};

/// Reads the rows of quick_rows; what is wrong is left in the options.
QuickMeal read_meal(Options& options);

/// Puts into the form what was said, and what follows from it where nothing was. Fire and box are taken to be there ten
/// hours before the meal, but not before now, or at the last time before the meal at which the clock shows what was
/// said. The kind must be known.
void fill_in(trip::Form& form, const QuickMeal& meal, units::LocalTime now);

}  // namespace holdwater::cli
