// SPDX-License-Identifier: MIT
#include "units/history.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::near_abs;

namespace {

units::History tent() {
    units::History h;
    h.add(units::hours(0), units::celsius(50));
    h.add(units::hours(2), units::celsius(60));
    h.add(units::hours(4), units::celsius(50));
    return h;
}

}  // namespace

TEST_CASE("values between, before and after the points") {
    const units::History h = tent();
    CHECK(near_abs(h.at(units::hours(1)).celsius(), 55, 1e-12));
    CHECK(h.at(units::hours(-1)).celsius() == 50);
    CHECK(h.at(units::hours(9)).celsius() == 50);
    CHECK(h.highest().celsius() == 60);
    CHECK(near_abs(h.lowest(units::hours(1), units::hours(2)).celsius(), 55, 1e-12));
}

TEST_CASE("a jump shows the value after it") {
    units::History h;
    h.add(units::hours(0), units::celsius(50));
    h.add(units::hours(1), units::celsius(50));
    h.add(units::hours(1), units::celsius(60));
    CHECK(h.at(units::hours(1)).celsius() == 60);
    CHECK(near_abs(h.at(units::minutes(59)).celsius(), 50, 1e-12));
}

TEST_CASE("crossings and time below a level") {
    const units::History h = tent();
    CHECK(near_abs(units::in_hours(*h.first_at_or_above(units::celsius(55))), 1.0, 1e-12));
    CHECK_FALSE(h.first_at_or_above(units::celsius(61)).has_value());
    CHECK(near_abs(units::in_hours(*h.first_at_or_above(units::celsius(55), units::hours(1.5))), 1.5, 1e-12));
    CHECK(near_abs(units::in_hours(h.time_below(units::celsius(55), units::hours(0), units::hours(4))), 2.0, 1e-12));
    CHECK(
        near_abs(units::in_hours(h.time_below(units::celsius(55), units::hours(0.5), units::hours(3.5))), 1.0, 1e-12));
    CHECK(h.time_below(units::celsius(45), units::hours(0), units::hours(4)).si() == 0);
}
