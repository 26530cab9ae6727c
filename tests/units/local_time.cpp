// SPDX-License-Identifier: MIT
#include "units/local_time.hpp"

#include <doctest/doctest.h>

#include <limits>

using namespace holdwater::units;

TEST_CASE("civil dates and weekdays") {
    const LocalTime t = LocalTime::from_civil(2027, 10, 15, 16, 0);
    CHECK(t.iso() == "2027-10-15T16:00:00");
    CHECK(t.date() == "2027-10-15");
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

TEST_CASE("a wait without end is a date far off, on its own side of now") {
    const LocalTime now = LocalTime::from_civil(2027, 10, 15, 16, 0);
    const double endless = std::numeric_limits<double>::infinity();
    for (const double wait :
         {1e18, 1e300, std::numeric_limits<double>::max(), endless, std::numeric_limits<double>::quiet_NaN()}) {
        CAPTURE(wait);
        CHECK(now.after(seconds(wait)) > now.after(hours(24 * 365 * 1000.0)));
        CHECK(now.after(seconds(wait)).iso().size() == now.iso().size());
        if (wait == wait) {
            CHECK(now.after(seconds(-wait)) < now.after(hours(-24 * 365 * 1000.0)));
        }
    }
}
