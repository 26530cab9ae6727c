// SPDX-License-Identifier: MIT
// Published and common values of boxes.
#include "answer/gauge/boxes.hpp"
#include "answer/gauge/gauge.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;
using units::hours;

namespace {

answer::GaugeQuestion two_readings(double first, double last, double apart, double air, double litres) {
    answer::GaugeQuestion question;
    question.readings = {{hours(0), celsius(first), "", {}}, {hours(apart), celsius(last), "", {}}};
    question.outside = steady(air);
    question.water = units::litres(litres);
    question.reading_error = units::kelvins(0.2);
    question.floor = celsius(54.4);
    return question;
}

}  // namespace

TEST_CASE("planning value of an ordinary chest: 20 kg water, 0.77 W/K, tau 30 h, 60 -> 57.4 C in 2 h at 20 C") {
    // Heat reference e.3, last paragraph (computed from wall and area): 83.7 kJ/K, three figures at most.
    const double litres = 20.0 / heat::water_density(celsius(60)).si() * 1e3;
    auto question = two_readings(60.0, 57.4, 2.0, 20.0, litres);
    question.liner = units::HeatCapacity{0};
    const auto made = answer::gauge(question);
    REQUIRE(made.ok());
    // 57.4 carries 0.05 K of 2.6 K: 2 %; 30 h carries 0.5 h.
    CHECK(near_rel(made->loss.likely.si(), 0.77, 0.03));
    CHECK(near_abs(units::in_hours(made->loss.time_constant), 30.0, 0.5 + 0.6));
    CHECK(near_rel(made->loss.likely.si() * made->loss.time_constant.si(), 83.7e3, 0.0005 + 0.0003));
    // And back: with tau 30 h the bath is down to 57.4 C after 2 h.
    const auto down = answer::time_above(celsius(60), celsius(57.4), celsius(20), units::Duration{83.7e3 / 0.77});
    CHECK(near_abs(units::in_hours(*down), 2.0, 0.05));
}

TEST_CASE("aim of an insulated pot: 100 -> 90 C in 90 min at 20 C, 5 L: 0.52 W/K") {
    // Heat reference e.3, row "implied by that aim" (computed, two figures): 5 kg x 4186 J/kg/K.
    const double litres = 5.0 / heat::water_density(celsius(100)).si() * 1e3;
    auto question = two_readings(100.0, 90.0, 1.5, 20.0, litres);
    question.liner = units::HeatCapacity{0};
    const auto made = answer::gauge(question);
    REQUIRE(made.ok());
    CHECK(near_abs(made->loss.likely.si(), 0.52, 0.005));
}

TEST_CASE("common practice, no source: a small box of 20 L at 60 C loses about 5.5 K in 2.5 h in freezing air") {
    const auto made = answer::gauge(two_readings(60.0, 54.5, 2.5, 0.0, 20.0));
    REQUIRE(made.ok());
    CHECK(made->loss.likely.si() > 0.7);
    CHECK(made->loss.likely.si() < 1.5);
}
