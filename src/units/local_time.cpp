// SPDX-License-Identifier: MIT
#include "units/local_time.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <cmath>

namespace holdwater::units {
namespace {

std::chrono::year_month_day date_of(LocalTime t) {
    const std::chrono::local_seconds moment{std::chrono::seconds{t.seconds()}};
    return std::chrono::year_month_day{std::chrono::floor<std::chrono::days>(moment)};
}

}  // namespace

LocalTime LocalTime::from_civil(int year, int month, int day, int hour, int minute, int second) {
    using namespace std::chrono;
    const local_days date{std::chrono::year{year} / std::chrono::month{static_cast<unsigned>(month)} /
                          std::chrono::day{static_cast<unsigned>(day)}};
    const auto whole = std::chrono::duration_cast<std::chrono::seconds>(date.time_since_epoch()).count();
    return LocalTime{whole + std::int64_t{hour} * 3600 + std::int64_t{minute} * 60 + second};
}

LocalTime LocalTime::after(Duration d) const {
    constexpr double furthest = 1e11;  // s, three thousand years: "never", and still a date
    const double wait = d.si() < furthest ? std::max(d.si(), -furthest) : furthest;
    return LocalTime{seconds_ + static_cast<std::int64_t>(std::llround(wait))};
}

std::string LocalTime::iso() const {
    return fmt::format("{}T{}:{:02}", date(), clock_24(), second_of_day() % 60);
}

std::string LocalTime::date() const {
    const auto date = date_of(*this);
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                       static_cast<unsigned>(date.day()));
}

std::string LocalTime::clock_24() const {
    const int s = second_of_day();
    return fmt::format("{:02}:{:02}", s / 3600, s / 60 % 60);
}

std::string LocalTime::clock_12() const {
    const int s = second_of_day();
    const int hour = s / 3600;
    return fmt::format("{}:{:02} {}", hour % 12 == 0 ? 12 : hour % 12, s / 60 % 60, hour < 12 ? "am" : "pm");
}

int LocalTime::weekday() const {
    const std::chrono::local_seconds moment{std::chrono::seconds{seconds_}};
    return static_cast<int>(std::chrono::weekday{std::chrono::floor<std::chrono::days>(moment)}.c_encoding());
}

LocalTime next(ClockTime clock, LocalTime from) {
    int wait = clock.second_of_day - from.second_of_day();
    if (wait < 0) {
        wait += 86400;
    }
    return LocalTime{from.seconds() + wait};
}

}  // namespace holdwater::units
