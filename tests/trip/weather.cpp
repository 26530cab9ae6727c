// SPDX-License-Identifier: MIT
#include "support/near.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

namespace {

units::LocalTime at(int day, int hour, int minute = 0) {
    return units::LocalTime::from_civil(2027, 10, day, hour, minute);
}

trip::Weather weather(const std::string& hours) {
    return good_trip(changed(small_trip, "[{ at = \"12:00\", air = \"15 C\" }]", hours)).weather;
}

}  // namespace

TEST_CASE("daily hours run in straight lines and wrap round midnight") {
    const trip::Weather w = weather(R"([{ at = "08:00", air = "1 C" }, { at = "14:00", air = "9 C" },
        { at = "22:00", air = "-2 C" }, { at = "05:00", air = "-5 C" }])");
    struct Row {
        int hour, minute;
        double air;
    };
    for (const Row& row : {Row{8, 0, 1}, Row{11, 0, 5}, Row{14, 0, 9}, Row{18, 0, 3.5}, Row{22, 0, -2},
                           Row{1, 30, -3.5}, Row{0, 0, -2 - 3 * 2.0 / 7}, Row{5, 0, -5}, Row{6, 30, -2}}) {
        CAPTURE(row.hour);
        CHECK(near_abs(w.air_at(at(15, row.hour, row.minute)).celsius(), row.air, 1e-9));
        CHECK(near_abs(w.air_at(at(28, row.hour, row.minute)).celsius(), row.air, 1e-9));  // every day the same
    }
}

TEST_CASE("one daily hour is a constant") {
    const trip::Weather w = weather("[{ at = \"12:00\", air = \"15 C\" }]");
    for (int hour = 0; hour < 24; ++hour) {
        CHECK(near_abs(w.air_at(at(15, hour)).celsius(), 15, 1e-12));
    }
}

TEST_CASE("dated hours run in straight lines and hold on outside") {
    // The small trip runs on 8 May; dates far from it would be warned about.
    const trip::Weather w =
        weather(R"([{ at = 2027-05-08T20:00:00, air = "10 C" }, { at = "2027-05-08 08:00", air = "4 C" },
        { at = 2027-05-08T14:00:00, air = "16 C" }])");
    const auto on = [](int day, int hour) { return units::LocalTime::from_civil(2027, 5, day, hour, 0); };
    CHECK(near_abs(w.air_at(on(1, 0)).celsius(), 4, 1e-12));
    CHECK(near_abs(w.air_at(on(8, 8)).celsius(), 4, 1e-12));
    CHECK(near_abs(w.air_at(on(8, 11)).celsius(), 10, 1e-12));
    CHECK(near_abs(w.air_at(on(8, 14)).celsius(), 16, 1e-12));
    CHECK(near_abs(w.air_at(on(8, 17)).celsius(), 13, 1e-12));
    CHECK(near_abs(w.air_at(on(8, 20)).celsius(), 10, 1e-12));
    CHECK(near_abs(w.air_at(on(9, 12)).celsius(), 10, 1e-12));
}

TEST_CASE("the air never jumps and never leaves its hours") {
    const trip::Weather w = weather(R"([{ at = "03:10", air = "-7 C" }, { at = "15:50", air = "21 C" },
        { at = "23:59", air = "3 C" }])");
    double before = w.air_at(at(15, 0)).celsius();
    for (int minute = 1; minute < 3 * 24 * 60; ++minute) {
        const double now = w.air_at(at(15, 0).after(units::minutes(minute))).celsius();
        CHECK(std::abs(now - before) < 0.06);  // steepest: 18 K in 489 min
        CHECK(now >= -7 - 1e-9);
        CHECK(now <= 21 + 1e-9);
        before = now;
    }
}

TEST_CASE("the order in which hours are written is of no matter") {
    CHECK(
        trip::canonical(good_trip(changed(small_trip, "{ at = \"12:00\", air = \"15 C\" }",
                                          "{ at = \"12:00\", air = \"15 C\" }, { at = \"03:00\", air = \"5 C\" }"))) ==
        trip::canonical(good_trip(changed(small_trip, "{ at = \"12:00\", air = \"15 C\" }",
                                          "{ at = 03:00:00, air = \"5 C\" }, { at = \"12:00\", air = \"15 C\" }"))));
}

TEST_CASE("weather without hours is our own fault and says so") {
    const trip::Weather none;
    CHECK_THROWS_AS(none.air_at(at(15, 0)), std::logic_error);
}
