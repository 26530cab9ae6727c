// SPDX-License-Identifier: MIT
#include "trip/moment.hpp"

#include "trip/ranges.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <chrono>

namespace holdwater::trip {
namespace {

/// Digits at a fixed place of the text; -1 if they are anything else.
int digits(std::string_view text, std::size_t at, std::size_t size) {
    int value = 0;
    for (const char c : text.substr(at, size)) {
        if (c < '0' || c > '9') {
            return -1;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

bool year_can_be_meant(int year) {
    return year >= ranges::year.low && year <= ranges::year.high;
}

}  // namespace

std::optional<units::LocalTime> moment_of(const toml::date_time& written, std::string_view label, problem::Place place,
                                          Report& report) {
    if (written.offset) {
        report.error(std::move(place), "time-with-offset", fmt::format("{}: the time has an offset or a Z", label),
                     "write what the watch at the camp shows, without Z or +02:00");
        return std::nullopt;
    }
    if (!year_can_be_meant(written.date.year)) {
        report.error(std::move(place), "out-of-range",
                     fmt::format("{}: the year {} cannot be meant", label, written.date.year),
                     fmt::format("from {} to {}", ranges::year.low, ranges::year.high));
        return std::nullopt;
    }
    return units::LocalTime::from_civil(written.date.year, written.date.month, written.date.day, written.time.hour,
                                        written.time.minute, written.time.second);
}

std::optional<units::LocalTime> parse_moment(std::string_view text) {
    constexpr std::string_view shape = "dddd-dd-ddTdd:dd:dd";
    if (text.size() != shape.size() && text.size() != shape.size() - 3) {
        return std::nullopt;
    }
    for (const std::size_t i : {4U, 7U, 13U, 16U}) {
        if (i < text.size() && text[i] != shape[i]) {
            return std::nullopt;
        }
    }
    if (text[10] != 'T' && text[10] != ' ') {
        return std::nullopt;
    }
    const int year = digits(text, 0, 4);
    const int month = digits(text, 5, 2);
    const int day = digits(text, 8, 2);
    const int hour = digits(text, 11, 2);
    const int minute = digits(text, 14, 2);
    const int second = text.size() == shape.size() ? digits(text, 17, 2) : 0;
    const bool digits_good = year >= 0 && month >= 0 && day >= 0;
    const bool time_good = hour >= 0 && hour < 24 && minute >= 0 && minute < 60 && second >= 0 && second < 60;
    if (!digits_good || !time_good || !year_can_be_meant(year)) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        return std::nullopt;
    }
    return units::LocalTime::from_civil(year, month, day, hour, minute, second);
}

}  // namespace holdwater::trip
