// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge_log.hpp"

#include "answer/gauge/gauge_stretch.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace holdwater::answer {
namespace {

/// The log with its bath column in the other unit, or nothing if the header has no such column or it cannot be so.
std::optional<trip::Log> read_as(std::string_view text, const std::string& file_name, std::string_view written,
                                 std::string_view other) {
    const auto at = text.find(written);
    if (at == std::string_view::npos) {
        return std::nullopt;
    }
    std::string changed(text);
    changed.replace(at, written.size(), other);
    auto log = trip::read_log(changed, file_name);
    return log ? std::optional(std::move(log).value()) : std::nullopt;
}

bool all_baths(const trip::Log& log, units::Temperature low, units::Temperature high) {
    return std::all_of(log.rows.begin(), log.rows.end(),
                       [&](const trip::LogRow& row) { return !row.bath || (*row.bath >= low && *row.bath <= high); });
}

// A bath that somebody tests a box with: hotter than the warmest air, and no hotter than water gets.
units::Temperature coolest_bath() {
    return facts::facts().temperature("gauge.bath-coolest");
}
constexpr units::Temperature hottest_bath = units::celsius(100);

/// Out of range as Celsius, but a sound bath as Fahrenheit. A log whose every fault goes with the other unit had none
/// but in its bath column.
std::optional<problem::Problem> fahrenheit_fault(std::string_view text, const std::string& file_name,
                                                 const problem::Problems& problems) {
    const auto fault = std::find_if(problems.begin(), problems.end(), [](const problem::Problem& p) {
        return p.severity == problem::Severity::error && p.code == "out-of-range";
    });
    if (fault == problems.end()) {
        return std::nullopt;
    }
    const auto log = read_as(text, file_name, "bath_c", "bath_f");
    if (!log || !all_baths(*log, coolest_bath(), hottest_bath)) {
        return std::nullopt;
    }
    problem::Problem found =
        problem::error("unit-fahrenheit", "the bath readings look like Fahrenheit under a header that says bath_c",
                       "name the column bath_f");
    found.place = fault->place;
    return found;
}

/// Cool as Fahrenheit, but a sound bath as Celsius.
std::optional<problem::Problem> celsius_fault(std::string_view text, const std::string& file_name,
                                              const trip::Log& log) {
    const auto as_celsius = read_as(text, file_name, "bath_f", "bath_c");
    if (!as_celsius || !all_baths(*as_celsius, coolest_bath(), hottest_bath) ||
        !all_baths(log, units::celsius(-5), coolest_bath())) {
        return std::nullopt;
    }
    problem::Problem found =
        problem::error("unit-celsius", "the bath readings look like Celsius under a header that says bath_f",
                       "name the column bath_c");
    found.place = log.rows.front().place;
    return found;
}

}  // namespace

problem::Result<GaugeLog> read_gauge_log(std::string_view text, const std::string& file_name) {
    const auto log = trip::read_log(text, file_name);
    if (!log) {
        problem::Problems problems = log.problems();
        if (const auto fault = fahrenheit_fault(text, file_name, problems)) {
            problems.insert(problems.begin(), *fault);
        }
        return problems;
    }
    if (const auto fault = celsius_fault(text, file_name, *log)) {
        return *fault;
    }
    GaugeLog made;
    made.gaps = log->gaps;
    for (const trip::LogRow& row : log->rows) {
        if (row.bath) {
            made.readings.push_back({row.at, *row.bath, row.note, row.place});
        } else if (tells_of_touching(row.note)) {
            made.touches.push_back({row.at, row.note, row.place});
        }
        if (row.outside) {
            made.outside.add(row.at, *row.outside);
        }
    }
    return {made, log.problems()};
}

}  // namespace holdwater::answer
