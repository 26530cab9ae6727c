// SPDX-License-Identifier: MIT
#include "plan/provisions/portions.hpp"

#include "made_up.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::near_abs;
using Verdict = plan::Portions::Verdict;

namespace {

trip::Trip with(double kilograms, int pieces, bool bone, int people) {
    trip::Trip trip = support::afternoon();
    trip.foods.resize(1);
    trip.foods.front().mass = units::kilograms(kilograms);
    trip.foods.front().pieces = pieces;
    trip.foods.front().bone = bone;
    trip.people = people;
    return trip;
}

}  // namespace

TEST_CASE("portions by hand: 2 kg without bone lose a fifth, with bone a third before that") {
    const trip::Trip plain_trip = with(1.0, 2, false, 8);
    const plan::Portions plain = plan::portions_of(plain_trip, plain_trip.serve);
    CHECK(near_abs(plain.raw.si(), 2.0, 1e-12));
    CHECK(near_abs(plain.boneless.si(), 2.0, 1e-12));
    CHECK(near_abs(plain.cooked.likely.si(), 1.6, 1e-12));
    CHECK(near_abs(plain.each.likely.si(), 0.2, 1e-12));
    CHECK(near_abs(plain.each.low.si(), 0.175, 1e-12));
    CHECK(plain.serves_ordinary == 13);
    CHECK(plain.serves_hearty == 7);
    CHECK(plain.verdict == Verdict::enough);
    CHECK(plain.missing.si() == 0.0);
    const trip::Trip bony_trip = with(1.0, 2, true, 8);
    const plan::Portions bony = plan::portions_of(bony_trip, bony_trip.serve);
    CHECK(near_abs(bony.boneless.si(), 1.3, 1e-12));
    CHECK(near_abs(bony.cooked.likely.si(), 1.04, 1e-12));
    CHECK(near_abs(bony.cooked.low.si(), 0.84, 1e-12));
    CHECK(bony.serves_ordinary == 8);
    CHECK(bony.verdict == Verdict::scarce);
}

TEST_CASE("what was cooked before and is kept hot loses nothing more") {
    trip::Trip trip = with(1.0, 2, false, 8);
    trip.foods.front().use = facts::Use::keep_hot;
    const plan::Portions portions = plan::portions_of(trip, trip.serve);
    CHECK(near_abs(portions.cooked.low.si(), 2.0, 1e-12));
    CHECK(near_abs(portions.cooked.likely.si(), 2.0, 1e-12));
    CHECK(near_abs(portions.cooked.high.si(), 2.0, 1e-12));
}

TEST_CASE("what is said to be missing makes it enough, and less does not") {
    for (const int people : {5, 11, 30}) {
        for (const bool bone : {false, true}) {
            trip::Trip trip = with(0.4, 1, bone, people);
            const plan::Portions before = plan::portions_of(trip, trip.serve);
            REQUIRE(before.verdict == Verdict::too_little);
            REQUIRE(before.missing.si() > 0);
            trip::Food more = trip.foods.front();
            more.bone = false;
            more.mass = before.missing * 1.0001;
            trip.foods.push_back(more);
            CHECK(plan::portions_of(trip, trip.serve).verdict == Verdict::enough);
            trip.foods.back().mass = before.missing * 0.99;
            CHECK(plan::portions_of(trip, trip.serve).verdict != Verdict::enough);
        }
    }
}

TEST_CASE("more eaters never get more, more food never gets worse") {
    double last = 1e9;
    Verdict verdict = Verdict::hearty;
    for (int people = 1; people <= 40; ++people) {
        const trip::Trip fed = with(0.5, 4, false, people);
        const plan::Portions portions = plan::portions_of(fed, fed.serve);
        CHECK(portions.each.likely.si() < last);
        CHECK(portions.verdict >= verdict);
        CHECK(portions.each.low < portions.each.likely);
        CHECK(portions.each.likely < portions.each.high);
        last = portions.each.likely.si();
        verdict = portions.verdict;
    }
    CHECK(verdict == Verdict::too_little);
}
