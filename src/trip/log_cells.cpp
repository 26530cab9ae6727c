// SPDX-License-Identifier: MIT
#include "trip/log_cells.hpp"

#include "trip/moment.hpp"
#include "trip/table.hpp"
#include "units/parse.hpp"
#include "units/plain_number.hpp"

#include <fmt/format.h>

namespace holdwater::trip {
namespace {

constexpr double day = 86400;
constexpr double longest_log = 14 * day;  // beyond two weeks it is no log of one meal (judgement)

}  // namespace

std::optional<units::Temperature> read_temperature_cell(const CsvCell& cell, int line, bool fahrenheit,
                                                        std::string_view label, const Range& range, Report& report) {
    if (cell.text.empty()) {
        return std::nullopt;
    }
    const problem::Place place = report.place(line, cell.column);
    if (!units::plain_number(cell.text)) {
        report.error(place, "number-unreadable", fmt::format("{}: \"{}\" is not a number", label, quoted(cell.text)),
                     "a plain number; the unit is in the header");
        return std::nullopt;
    }
    return quantity_in<units::Temperature>(cell.text + (fahrenheit ? " F" : " C"), label, range, place, report);
}

std::optional<double> LogClock::seconds_of(const CsvCell& cell, problem::Place place) {
    const auto fault = [&](std::string_view due) {
        report_.error(std::move(place), "time-unreadable",
                      fmt::format("time: \"{}\" cannot be read", quoted(cell.text)), due);
        return std::nullopt;
    };
    switch (kind_) {
        case TimeKind::minutes: {
            const auto value = units::plain_number(cell.text);
            if (!value || *value < 0 || *value * 60 > longest_log) {
                return fault(fmt::format("minutes since the start, from 0 to {:.0f}", longest_log / 60));
            }
            return *value * 60;
        }
        case TimeKind::clock: {
            const auto clock = units::parse_clock(quoted(cell.text));
            if (!clock) {
                return fault("hours and minutes like 06:30");
            }
            if (!last_) {
                zero_ = *clock;
            }
            double since = clock->second_of_day - std::get<units::ClockTime>(zero_).second_of_day;
            while (last_ && since < *last_) {
                since += day;
            }
            return since;
        }
        case TimeKind::moment: {
            const auto moment = parse_moment(cell.text);
            if (!moment) {
                return fault("date and time like 2027-10-15T16:00");
            }
            if (!last_) {
                zero_ = *moment;
            }
            return moment->since(std::get<units::LocalTime>(zero_)).si();
        }
    }
    return std::nullopt;
}

std::optional<units::Duration> LogClock::read(const CsvCell& cell, int line) {
    const problem::Place place = report_.place(line, cell.column);
    const auto seconds = seconds_of(cell, place);
    if (!seconds) {
        return std::nullopt;
    }
    const bool back = last_ && (*seconds < *last_ || (kind_ == TimeKind::clock && *seconds - *last_ > day / 2));
    if (back) {
        report_.error(place, "times-order",
                      fmt::format("time: {} is earlier than the row before it", quoted(cell.text)),
                      kind_ == TimeKind::clock
                          ? "rows in the order of the day; where more than 12 h lie between two rows, use column time"
                          : "rows in the order in which they were written");
        return std::nullopt;
    }
    if (*seconds > longest_log) {
        report_.error(place, "out-of-range", fmt::format("time: {} is too long after the first row", quoted(cell.text)),
                      fmt::format("at most {:.0f} days", longest_log / day));
        return std::nullopt;
    }
    at_last_ = last_ && *seconds == *last_ ? at_last_ + 1 : 1;
    last_ = *seconds;
    if (at_last_ > 2) {
        report_.error(place, "times-order", fmt::format("time: {} stands in more than two rows", quoted(cell.text)),
                      "at most two readings at one time: before and after a top-up");
        return std::nullopt;
    }
    return units::seconds(*seconds);
}

}  // namespace holdwater::trip
