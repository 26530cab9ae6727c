// SPDX-License-Identifier: MIT
// Local civil time as a cook's watch shows it: no time zone, no leap seconds, no daylight-saving jumps.
#pragma once

#include "units/quantity.hpp"

#include <compare>
#include <cstdint>
#include <string>

namespace holdwater::units {

/// A moment of local time, as whole seconds since 1970-01-01T00:00:00 of the same local clock.
class LocalTime {
  public:
    constexpr LocalTime() = default;
    constexpr explicit LocalTime(std::int64_t seconds) : seconds_(seconds) {}

    /// month 1 to 12, day 1 to 31, hour 0 to 23; the date must exist (the readers check it).
    static LocalTime from_civil(int year, int month, int day, int hour, int minute, int second = 0);

    constexpr std::int64_t seconds() const { return seconds_; }
    /// Seconds after midnight, 0 to 86 399.
    constexpr int second_of_day() const { return static_cast<int>(((seconds_ % 86400) + 86400) % 86400); }

    /// Whole seconds; a fraction is rounded to the nearest.
    LocalTime after(Duration d) const;
    Duration since(LocalTime earlier) const { return Duration{static_cast<double>(seconds_ - earlier.seconds_)}; }

    std::string iso() const;       // 2027-10-15T16:00:00
    std::string date() const;      // 2027-10-15
    std::string clock_24() const;  // 16:00
    std::string clock_12() const;  // 4:00 pm
    int weekday() const;           // 0 Sunday to 6 Saturday

    friend constexpr auto operator<=>(LocalTime, LocalTime) = default;

  private:
    std::int64_t seconds_ = 0;
};

/// A time of day that comes back every day: seconds after midnight, 0 to 86 399.
struct ClockTime {
    int second_of_day = 0;
    friend constexpr auto operator<=>(ClockTime, ClockTime) = default;
};

/// The first moment at or after `from` at which the watch shows `clock`.
LocalTime next(ClockTime clock, LocalTime from);

}  // namespace holdwater::units
