// SPDX-License-Identifier: MIT
// A pour that came too late and that nobody can measure: until when boiling through saves the food, against the
// decision worked out here along a bath of its own.
#include "facts/facts.hpp"
#include "plan/result/plan.hpp"
#include "safety/after_fall.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("a pour half an hour too late has a way out, and none for ever") {
    trip::Trip trip = support::trip_at("tests/card/trips/no-thermometer-beef.toml");
    trip.serve = trip.serve.after(units::hours(9));  // late enough for a top-up
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    REQUIRE_FALSE(plan->top_ups.empty());
    REQUIRE(plan->late_pour.has_value());
    const units::Duration allowed = units::minutes(facts::facts().spread("top-up.late").high);
    CHECK(plan->late_pour->until > allowed);
    const safety::FallRules rules = safety::fall_rules(trip.rules, trip.at_risk);
    // The clock alone, from the latest pour that the plan allows, leaves no more than this.
    CHECK(plan->late_pour->until - allowed < rules.longest);
    // In boiling water, whatever its film, the core of a 35 mm slab is not warm sooner than by conduction alone: with
    // Fo = alpha t / L^2 of 0.2 it has come a quarter of its way at the most.
    const double half = 0.0175;
    CHECK(plan->late_pour->boil.si() > 0.2 * half * half / 1.45e-7);
    CHECK(plan->late_pour->boil < units::hours(2));
}

TEST_CASE("whoever can read a bath has the table instead") {
    const trip::Trip trip = support::demo_trip("frosty-weekend");
    const auto plan = plan::make_plan(trip, support::effort_of({64, 1}, {256, 1}));
    REQUIRE(plan.ok());
    CHECK_FALSE(plan->late_pour.has_value());
}
