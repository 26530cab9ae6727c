// SPDX-License-Identifier: MIT
// What cooks commonly reckon with. These are common practice without a source, and only check our own judgement.
#include "made_up.hpp"
#include "plan/provisions/portions.hpp"
#include "plan/provisions/sides.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("a roast of 4.5 kg with bone serves eight to ten") {
    trip::Trip trip = support::afternoon();
    trip.foods.resize(1);
    trip.foods.front().mass = units::kilograms(4.5);
    trip.foods.front().pieces = 1;
    trip.foods.front().bone = true;
    trip.people = 9;
    const plan::Portions portions = plan::portions_of(trip, trip.serve);
    CHECK(portions.serves_hearty >= 8);
    CHECK(portions.serves_hearty <= 10);
    for (const int people : {8, 9, 10}) {
        trip.people = people;
        const auto verdict = plan::portions_of(trip, trip.serve).verdict;
        CHECK((verdict == plan::Portions::Verdict::enough || verdict == plan::Portions::Verdict::hearty));
    }
    trip.people = 25;
    CHECK(plan::portions_of(trip, trip.serve).verdict == plan::Portions::Verdict::too_little);
}

TEST_CASE("foil potatoes in the coals take 60 to 90 minutes and begin that long before serving") {
    trip::Trip trip = support::afternoon();
    for (const int minutes : {60, 75, 90}) {
        trip.sides = {{"foil potatoes", units::minutes(minutes)}};
        const plan::Plan plan = support::simple_plan(trip, 5.0, 100);
        const plan::Sides sides = plan::sides_of(plan);
        REQUIRE(sides.list.size() == 1);
        CHECK(sides.list.front().begin == support::noon(360 - minutes));
        CHECK(sides.notes.empty());
    }
}
