// SPDX-License-Identifier: MIT
// The queue at the pan.
#include "plan/provisions/sear.hpp"

#include "made_up.hpp"
#include "plan/result/effort.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "support/borrowed.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::near_abs;

namespace {

plan::Sear sear_for(const trip::Trip& trip) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    for (const plan::FoodSetup& food : setup->foods) {
        plan::FoodPlan one;
        one.food = food.food;
        one.piece = food.piece;
        one.standard = food.standard;
        one.ready_late = trip.serve.after(units::hours(-2));
        plan.foods.push_back(one);
    }
    return plan::sear_of(*setup, plan, plan.trip->serve);
}

}  // namespace

TEST_CASE("two loins, one in the pan at a time, four sides each: by hand") {
    const trip::Trip trip = support::demo_trip("frosty-weekend");
    const plan::Sear sear = sear_for(trip);
    REQUIRE(sear.foods.size() == 1);
    CHECK(sear.foods[0].pieces == 2);
    CHECK(sear.foods[0].at_once == 1);
    CHECK(sear.foods[0].sides == 4);
    CHECK(sear.foods[0].rounds == 2);
    CHECK(sear.pans == 1);
    // 2 x (4 x 90 s + 30 s) + 5 min
    CHECK(near_abs(sear.takes.si(), 2 * 390 + 300, 1e-9));
    CHECK(sear.take_out == trip.serve.after(units::seconds(-1080)));
    CHECK(sear.in_time);
    CHECK(sear.notes.empty());
}

TEST_CASE("more pieces never come out later; pans are added only to keep the wait short") {
    trip::Trip trip = support::demo_trip("class-day");
    units::Duration last{0};
    int pans = 1;
    for (const int pieces : {1, 4, 8, 14}) {
        trip.foods.front().pieces = pieces;
        const plan::Sear sear = sear_for(trip);
        CAPTURE(pieces);
        CHECK(sear.pans >= pans);
        if (sear.pans == pans) {
            CHECK(sear.takes >= last);
        }
        if (sear.pans == 1) {
            CHECK(sear.foods[0].rounds * sear.foods[0].at_once >= pieces);
        }
        CHECK(sear.foods[0].at_once <= pieces);
        last = sear.takes;
        pans = sear.pans;
    }
}

TEST_CASE("with one place on the fire a long queue is named, with more it is shared") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.foods.front().pieces = 8;  // two in a pan at a time: four rounds of 390 s, then 5 min
    trip.foods.front().mass = units::kilograms(0.9);
    trip.foods.front().length = units::millimetres(250);
    trip.foods.front().thickness = units::millimetres(66);
    trip.fire.pots = 1;
    const plan::Sear one = sear_for(trip);
    CHECK_FALSE(one.in_time);
    CHECK(support::has_code(one.notes, "sear-too-long"));
    trip.fire.pots = 3;  // one of them for the side dish
    const plan::Sear three = sear_for(trip);
    CHECK(three.in_time);
    CHECK(three.pans == 2);
    CHECK(three.takes < one.takes);
    CHECK_FALSE(support::has_code(three.notes, "sear-too-long"));
}

TEST_CASE("side dishes on every place of the fire leave none for the pan") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    REQUIRE(trip.fire.pots == 2);
    CHECK_FALSE(support::has_code(sear_for(trip).notes, "sear-no-place"));
    trip.sides.push_back({"cabbage", units::minutes(20)});
    CHECK(support::has_code(sear_for(trip).notes, "sear-no-place"));
}

TEST_CASE("what is seared is ready when the first piece goes into the pan, with the fire lit at the latest as well") {
    trip::Trip trip = support::demo_trip("class-day");
    const auto plan = plan::make_plan(trip, support::effort_of({64, 1}, {256, 1}));
    REQUIRE(plan.ok());
    for (const plan::FoodPlan& food : plan->foods) {
        CHECK(food.for_the_pan < food.due);
        CHECK(food.for_the_pan == plan->around.sear.take_out);
        CHECK(food.ready() <= food.for_the_pan);
    }
    // A meal a little sooner than that is refused, and not served late without a word.
    trip.light_fire = plan->fill.light_fire;
    const units::Duration room = plan->foods.front().for_the_pan.since(plan->foods.front().ready());
    trip.serve = trip.serve.after(-room - units::minutes(3));
    const auto sooner = plan::make_plan(trip, support::effort_of({64, 1}, {256, 1}));
    if (sooner.ok()) {  // by a hotter bath
        CHECK(sooner->foods.front().ready() <= sooner->foods.front().for_the_pan);
    } else {
        CHECK(support::has_code(sooner.problems(), "not-ready-in-time"));
    }
}

TEST_CASE("food that is finished over the fire does not stand in the queue") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.foods.front().cut = facts::Cut::tenderised;
    const plan::Sear sear = sear_for(trip);
    CHECK(sear.foods.empty());
    REQUIRE(sear.finished.size() == 1);
    CHECK(sear.finished.front() == "pork loin, boneless");
    CHECK(sear.notes.empty());
}
