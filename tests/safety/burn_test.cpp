// SPDX-License-Identifier: MIT
// Burn times from the published table: the shorter side between rows, and what a burn cannot do.
#include "safety/burn.hpp"

#include "facts/facts.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace holdwater;
using namespace holdwater::safety;
using support::near_rel;
using units::celsius;
using units::minutes;
using units::seconds;

TEST_CASE("burn times at the published rows, the shortest of conflicting ones") {
    CHECK(burn_times(celsius(45)).second == units::hours(2));
    CHECK(burn_times(celsius(45)).third == units::hours(3));
    CHECK(burn_times(celsius(48)).second == minutes(15));
    // 5 min to the third degree in one source, 10 in another; an infant 4 min.
    CHECK(burn_times(celsius(49)).third == minutes(5));
    CHECK(burn_times(celsius(49)).second == minutes(5));
    CHECK(burn_times(celsius(49)).infant == minutes(4));
    CHECK(burn_times(celsius(55)).second == seconds(17));
    CHECK(burn_times(celsius(60)).second == seconds(3));
    CHECK(burn_times(celsius(60)).third == seconds(5));
    CHECK(burn_times(celsius(60)).infant == seconds(1));
    CHECK(burn_times(celsius(66)).infant == seconds(0.5));
    CHECK(burn_times(celsius(70)).third == seconds(1));
}

TEST_CASE("between rows the hotter row's time counts, above the last its time") {
    CHECK(burn_times(celsius(55.1)).second == seconds(3));
    CHECK(burn_times(celsius(57)).third == seconds(5));
    CHECK(burn_times(celsius(53)).third == seconds(30));
    CHECK(burn_times(celsius(53)).second == seconds(17));
    CHECK(burn_times(celsius(61)).third == seconds(3));
    CHECK(burn_times(celsius(98)).third == seconds(1));
    CHECK(burn_times(celsius(98)).infant == seconds(0.5));
}

TEST_CASE("below the first row there is no published time, which promises nothing") {
    CHECK_FALSE(burn_times(celsius(44.9)).second.has_value());
    CHECK_FALSE(burn_times(celsius(44.9)).infant.has_value());
    CHECK_FALSE(burn_times(celsius(std::stod("nan"))).second.has_value());
}

TEST_CASE("hotter never burns later; second degree not after third; a child not after an adult") {
    BurnTimes before = burn_times(celsius(45));
    for (double c = 45.0; c <= 100.0; c += 0.05) {
        const BurnTimes times = burn_times(celsius(c));
        REQUIRE(times.second.has_value());
        REQUIRE(times.third.has_value());
        REQUIRE(times.infant.has_value());
        CHECK(*times.second <= *times.third);
        CHECK(*times.infant <= *times.second);
        CHECK(*times.second <= *before.second);
        CHECK(*times.third <= *before.third);
        CHECK(*times.infant <= *before.infant);
        // Never longer than the row at or below it.
        for (const facts::BurnRow& row : facts::facts().burns()) {
            if (row.water.celsius() <= c && row.third_degree) {
                CHECK(*times.third <= *row.third_degree);
            }
        }
        before = times;
    }
}

TEST_CASE("a count of two in 65 C water already reaches a burn") {
    CHECK(*burn_times(celsius(65)).second < seconds(2));
    CHECK(*burn_times(celsius(65)).third < seconds(2));
    CHECK(*burn_times(celsius(60)).infant < seconds(2));
}

TEST_CASE("the damage integral: steady, cut at its threshold, independent of the points") {
    units::History steady;
    steady.add(seconds(0), celsius(60));
    steady.add(seconds(10), celsius(60));
    const double rate = 3.1e98 * std::exp(-75000.0 / (60 + 273.15));
    CHECK(near_rel(burn_damage(steady), 10 * rate, 1e-12));
    units::History cool;
    cool.add(seconds(0), celsius(43.9));
    cool.add(seconds(1e6), celsius(43.9));
    CHECK(burn_damage(cool) == 0.0);
    units::History ramp;
    ramp.add(seconds(0), celsius(40));
    ramp.add(seconds(30), celsius(70));
    units::History fine;
    for (int i = 0; i <= 30000; ++i) {
        fine.add(seconds(i / 1000.0), celsius(40 + i / 1000.0));
    }
    CHECK(near_rel(burn_damage(ramp), burn_damage(fine), 1e-5));
}
