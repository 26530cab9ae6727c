// SPDX-License-Identifier: MIT
// Kill along a history: exact sums over the rows of a table.
#include "safety/kill.hpp"

#include "support/courses.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::safety;
using support::by_minutes;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::History;
using units::minutes;

namespace {

const facts::KillStandard& red_meat() {
    return facts::facts().kill_standard("us-red-meat-6.5");
}

facts::KillStandard two_rows() {
    facts::KillStandard standard;
    standard.rows = {{celsius(60), minutes(10)}, {celsius(70), minutes(1)}};
    return standard;
}

}  // namespace

TEST_CASE("between rows the lower row's time counts, below the first nothing, above the last its time") {
    CHECK_FALSE(hold_time(red_meat(), celsius(54.39)).has_value());
    CHECK(hold_time(red_meat(), celsius(54.4)) == minutes(112));
    CHECK(hold_time(red_meat(), units::fahrenheit(130)) == minutes(112));
    CHECK(hold_time(red_meat(), celsius(54.99)) == minutes(112));
    CHECK(hold_time(red_meat(), celsius(57.2)) == minutes(36));
    CHECK(hold_time(red_meat(), celsius(63.0)) == minutes(4));
    CHECK(hold_time(red_meat(), celsius(75)) == units::seconds(14));
    const facts::KillStandard& poultry = facts::facts().kill_standard("us-poultry-12-fat");
    CHECK_FALSE(hold_time(poultry, celsius(57.7)).has_value());
    CHECK(near_rel(hold_time(poultry, celsius(62.2))->si(), 15.9 * 60, 1e-12));
    CHECK(hold_time(poultry, celsius(74)) == hold_time(poultry, celsius(62.2)));
    CHECK_FALSE(hold_time(facts::facts().kill_standard("us-fish-63"), celsius(62.9)).has_value());
    CHECK_FALSE(hold_time(facts::facts().kill_standard("uk-70-2min"), celsius(59.9)).has_value());
    CHECK(hold_time(facts::facts().kill_standard("uk-70-2min"), celsius(70)) == minutes(2));
}

TEST_CASE("a steady core meets the standard after exactly the row's time") {
    const History steady = by_minutes({{0, 57.2}, {600, 57.2}});
    CHECK(near_rel(kill_fraction(red_meat(), steady), 600.0 / 36.0, 1e-12));
    CHECK(near_rel(moment_met(red_meat(), steady)->si(), 36 * 60.0, 1e-12));
    CHECK(near_rel(moment_met(red_meat(), steady, 2.0)->si(), 72 * 60.0, 1e-12));
    CHECK_FALSE(moment_met(red_meat(), by_minutes({{0, 57.2}, {35.9, 57.2}})).has_value());
    CHECK(moment_met(red_meat(), by_minutes({{0, 57.2}, {36, 57.2}})).has_value());
}

TEST_CASE("a slope is cut at the rows") {
    // 50 to 80 C in 30 min: 10 min under 60, 10 min between the rows, 10 min above 70.
    const History up = by_minutes({{0, 50}, {30, 80}});
    CHECK(near_rel(kill_fraction(two_rows(), up), 10.0 / 10.0 + 10.0 / 1.0, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), up)), 20.0, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), up, 0.5)), 15.0, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), up, 3.0)), 22.0, 1e-12));
    // The same slope downwards: first the hot row.
    const History down = by_minutes({{0, 80}, {30, 50}});
    CHECK(near_rel(kill_fraction(two_rows(), down), 11.0, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), down, 3.0)), 3.0, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), down, 10.5)), 15.0, 1e-12));
}

TEST_CASE("jumps, gaps below the rows and empty histories") {
    const History jump = by_minutes({{0, 50}, {5, 50}, {5, 65}, {10, 65}, {10, 50}, {60, 50}, {60, 65}, {70, 65}});
    CHECK(near_rel(kill_fraction(two_rows(), jump), 1.5, 1e-12));
    CHECK(near_rel(units::in_minutes(*moment_met(two_rows(), jump)), 65.0, 1e-12));
    CHECK(kill_fraction(two_rows(), History{}) == 0.0);
    CHECK(kill_fraction(two_rows(), by_minutes({{0, 90}})) == 0.0);
    CHECK_FALSE(moment_met(two_rows(), History{}).has_value());
    CHECK(kill_fraction(two_rows(), by_minutes({{0, 59.9}, {6000, 59.9}})) == 0.0);
}

TEST_CASE("the sum does not depend on where a history is cut into points") {
    const History coarse = by_minutes({{0, 52}, {200, 61}, {500, 55}});
    History fine;
    for (int i = 0; i <= 5000; ++i) {
        const units::Duration t = minutes(i / 10.0);
        fine.add(t, coarse.at(t));
    }
    CHECK(near_rel(kill_fraction(red_meat(), coarse), kill_fraction(red_meat(), fine), 1e-9));
    CHECK(near_abs(moment_met(red_meat(), coarse)->si(), moment_met(red_meat(), fine)->si(), 1e-3));
}

TEST_CASE("a slow come-up doubles the hold") {
    CHECK(adaptation_factor(minutes(59)) == 1.0);
    CHECK(adaptation_factor(minutes(60)) == 1.0);
    CHECK(adaptation_factor(minutes(61)) == 2.0);
    CHECK(adaptation_factor(std::nullopt) == 2.0);
}
