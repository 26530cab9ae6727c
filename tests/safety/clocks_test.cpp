// SPDX-License-Identifier: MIT
// Come-up, growth along a history, and the clocks of cooling leftovers.
#include "safety/clocks.hpp"

#include "safety/growth.hpp"
#include "support/beef.hpp"
#include "support/courses.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::safety;
using support::beef;
using support::by_hours;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::History;
using units::hours;

TEST_CASE("come-up runs from 10 C to 54.4 C") {
    const auto up = come_up(by_hours({{0, 0}, {6, 60}}));
    REQUIRE(up.has_value());
    CHECK(near_rel(units::in_hours(*up), 4.44, 1e-12));
    CHECK(near_rel(units::in_hours(*come_up(by_hours({{0, 20}, {2, 54.4}}))), 2.0, 1e-12));
    CHECK(near_rel(units::in_hours(*come_up(by_hours({{5, 4}, {5, 20}, {7, 60}}))), 1.72, 1e-12));
    CHECK(*come_up(by_hours({{0, 60}, {1, 60}})) == hours(0));
    CHECK_FALSE(come_up(by_hours({{0, 4}, {9, 54.3}})).has_value());
    CHECK_FALSE(come_up(by_hours({{0, 4}, {9, 9}})).has_value());
    CHECK_FALSE(come_up(History{}).has_value());
    // A dip on the way does not start the clock anew.
    CHECK(near_rel(units::in_hours(*come_up(by_hours({{0, 10}, {1, 30}, {2, 5}, {3, 54.4}}))), 3.0, 1e-12));
}

TEST_CASE("come-up: warn from 3 h, refuse above 6 h or when it never arrives") {
    CHECK(judge_come_up(hours(2.99)) == ComeUpVerdict::fine);
    CHECK(judge_come_up(hours(3.0)) == ComeUpVerdict::slow);
    CHECK(judge_come_up(hours(6.0)) == ComeUpVerdict::slow);
    CHECK(judge_come_up(hours(6.01)) == ComeUpVerdict::refused);
    CHECK(judge_come_up(std::nullopt) == ComeUpVerdict::refused);
}

TEST_CASE("growth: a steady bath, a slope against fine steps, and nothing outside the limits") {
    CHECK(near_rel(growth_without_lag(beef(), by_hours({{0, 46}, {2, 46}})), 2 * growth_rate(beef(), celsius(46)),
                   1e-12));
    const History slope = by_hours({{0, 4}, {3, 60}, {8, 20}});
    double sum = 0.0;
    constexpr int steps = 400000;
    for (int i = 0; i < steps; ++i) {
        sum += growth_rate(beef(), slope.at(hours(8.0 * (i + 0.5) / steps))) * 8.0 / steps;
    }
    CHECK(near_rel(growth_without_lag(beef(), slope), sum, 1e-8));
    CHECK(growth_without_lag(beef(), by_hours({{0, 53}, {100, 80}})) == 0.0);
    CHECK(growth_without_lag(beef(), by_hours({{0, 4}, {100, 10}})) == 0.0);
    CHECK(growth_without_lag(beef(), History{}) == 0.0);
    CHECK(growth_without_lag(beef(), by_hours({{0, 4}, {0, 60}, {1, 60}})) == 0.0);
}

TEST_CASE("growth with lag starts slowly and runs at the full rate later") {
    CHECK(near_abs(lagged_growth(0.0, 0.00699), 0.0, 1e-15));
    // The closed form against direct integration of the two rate equations.
    const double q0 = 0.0137;
    const double exponent = 4.0;
    double q = q0;
    double ln_n = 0.0;
    constexpr int steps = 2000000;
    const double step = exponent * std::log(10.0) / steps;
    for (int i = 0; i < steps; ++i) {
        const double middle = q * std::exp(step / 2);
        ln_n += step * middle / (1 + middle);
        q *= std::exp(step);
    }
    CHECK(near_rel(lagged_growth(exponent, q0), ln_n / std::log(10.0), 1e-9));
    CHECK(near_rel(lagged_growth(5000.0, 0.0699), 5000.0 + std::log10(0.0699 / 1.0699), 1e-12));
    CHECK(near_rel(lagged_growth(exponent_for(1.0, q0), q0), 1.0, 1e-12));
}

TEST_CASE("leftovers: 57 to 21 C within 2 h, then 21 to 5 C within 4 h") {
    const Cooling fine = judge_cooling(by_hours({{0, 60}, {1, 57}, {3, 21}, {7, 5}, {8, 4}}));
    CHECK(fine.in_time);
    CHECK(near_rel(units::in_hours(*fine.first), 2.0, 1e-12));
    CHECK(near_rel(units::in_hours(*fine.second), 4.0, 1e-12));
    CHECK_FALSE(judge_cooling(by_hours({{0, 57}, {2.1, 21}, {4, 5}})).in_time);
    CHECK_FALSE(judge_cooling(by_hours({{0, 57}, {1, 21}, {5.1, 5}})).in_time);
    CHECK(judge_cooling(by_hours({{0, 40}, {2, 21}, {5, 5}})).in_time);
    CHECK_FALSE(judge_cooling(by_hours({{0, 40}, {2.1, 21}, {5, 5}})).in_time);
    CHECK_FALSE(judge_cooling(by_hours({{0, 57}, {1, 21}, {3, 8}})).in_time);
    CHECK_FALSE(judge_cooling(by_hours({{0, 57}, {1, 22}})).first.has_value());
    CHECK_FALSE(judge_cooling(History{}).in_time);
    // Warmed up again on the way: the clocks run until it is down for good.
    CHECK_FALSE(judge_cooling(by_hours({{0, 57}, {1, 20}, {2, 30}, {2.5, 20}, {4, 5}})).in_time);
}

TEST_CASE("leftovers that were kept hot first: the clock starts with the fall below 57 C") {
    const Cooling cooling = judge_cooling(by_hours({{0, 60}, {5, 58}, {5, 50}, {6, 21}, {9, 5}}));
    CHECK(near_rel(units::in_hours(*cooling.first), 1.0, 1e-12));
    CHECK(cooling.in_time);
    // Falling below, warm again, then cooling: from the first fall on.
    CHECK_FALSE(judge_cooling(by_hours({{0, 60}, {0.5, 55}, {1, 60}, {3, 21}, {6, 5}})).in_time);
}
