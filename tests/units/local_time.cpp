// SPDX-License-Identifier: MIT
#include "units/local_time.hpp"

#include <doctest/doctest.h>

using namespace holdwater::units;

TEST_CASE("civil dates and weekdays") {
    const LocalTime t = LocalTime::from_civil(2027, 10, 15, 16, 0);
    CHECK(t.iso() == "2027-10-15T16:00:00");
    CHECK(t.clock_12() == "4:00 pm");
    CHECK(LocalTime::from_civil(1970, 1, 1, 0, 0).seconds() == 0);
    CHECK(LocalTime::from_civil(1970, 1, 1, 0, 0).weekday() == 4);  // a Thursday, by the calendar
    CHECK(LocalTime::from_civil(2028, 2, 29, 12, 0).after(hours(24)).iso() == "2028-03-01T12:00:00");
    CHECK(t.after(hours(20.5)).since(t).si() == 20.5 * 3600);
}

TEST_CASE("the next time the watch shows an hour") {
    const LocalTime evening = LocalTime::from_civil(2027, 10, 15, 23, 0);
    CHECK(next(ClockTime{6 * 3600}, evening).iso() == "2027-10-16T06:00:00");
    CHECK(next(ClockTime{23 * 3600}, evening) == evening);
}
