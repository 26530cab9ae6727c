// SPDX-License-Identifier: MIT
// Plans of steaks, of food that is kept hot, of several sittings, and what is said of food that is held for long.
#include "plan/result/plan.hpp"
#include "support/efforts.hpp"
#include "support/problems.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

namespace {

plan::Effort some() {
    return support::effort_of({64, 1}, {256, 1});
}

/// A box of 30 L and three pots, fire at 10:00.
trip::Trip small_trip() {
    trip::Trip trip = support::demo_trip("class-day");
    trip.sides.clear();
    trip.journey.reset();
    trip.from = units::LocalTime::from_civil(2027, 6, 12, 9, 0);
    trip.serve = units::LocalTime::from_civil(2027, 6, 12, 14, 0);
    return trip;
}

trip::Food food_of(const char* kind, double thickness, double start, double target, double tolerance) {
    trip::Food food;
    food.name = kind;
    food.kind = kind;
    food.shape = facts::Shape::slab;
    food.thickness = units::millimetres(thickness);
    food.mass = units::kilograms(0.3);
    food.pieces = 6;
    food.start = units::celsius(start);
    food.target = units::celsius(target);
    food.tolerance = units::kelvins(tolerance);
    food.contact = facts::Contact::free;
    return food;
}

trip::Food rice() {
    trip::Food food = food_of("rice-cooked", 50, 80, 80, 5);
    food.use = facts::Use::keep_hot;
    food.pieces = 2;
    return food;
}

bool any_event(const plan::Plan& plan, plan::Event::Kind kind, std::size_t index) {
    for (const plan::Event& event : plan.events) {
        if (event.kind == kind && event.index == index) {
            return true;
        }
    }
    return false;
}

}  // namespace

TEST_CASE("a steak is ready sooner than the roast that it would be, and is seared") {
    trip::Trip trip = small_trip();
    trip.foods = {food_of("beef-top-sirloin", 30, 5, 60, 5)};
    const auto roast = plan::make_plan(trip, some());
    trip.foods.front().use = facts::Use::steak;
    const auto steak = plan::make_plan(trip, some());
    REQUIRE(roast.ok());
    REQUIRE(steak.ok());
    CHECK(steak->foods.front().standard.sear.has_value());
    CHECK(steak->foods.front().ready() <= roast->foods.front().ready());
    // The limits of what grows stay: floors as for the roast, and what the core took to come up is looked at.
    CHECK(steak->levels.floor >= roast->levels.floor);
    CHECK(steak->foods.front().come_up.high.has_value());
    CHECK(steak->foods.front().net_growth() == 0.0);
    REQUIRE(steak->around.sear.foods.size() == 1);
    trip.at_risk = true;
    const auto refused = plan::make_plan(trip, some());
    CHECK_FALSE(refused.ok());
    CHECK(support::count_code(refused.problems(), "steak-refused") == 1);
}

TEST_CASE("food that is kept hot stays over its floor until it is eaten, under every set of rules") {
    for (const char* rules : {"us", "uk", "au-nz", "ca"}) {
        INFO(rules);
        trip::Trip trip = small_trip();
        trip.rules = support::ruleset(rules);
        trip.foods = {rice()};
        const auto plan = plan::make_plan(trip, some());
        REQUIRE(plan.ok());
        const plan::FoodPlan& food = plan->foods.front();
        CHECK(plan->levels.floor == food.standard.hold_floor);
        CHECK(plan->levels.action_line > food.standard.hold_floor);
        CHECK(food.core_peak.high <= food.food->start + units::kelvins(5));
        CHECK_FALSE(any_event(*plan, plan::Event::Kind::ready, 0));
        CHECK(plan->around.sear.foods.empty());
        CHECK(food.hold.baths.empty());
        // The bath, as the coldest of 20 scenarios has it, at every quarter of an hour with food in.
        for (std::size_t i = 0; i < plan->curve_at.size(); ++i) {
            if (trip.from.after(plan->curve_at[i]) > plan->fill.food_in.after(units::minutes(15))) {
                CHECK(plan->bath_curve[i].low >= food.standard.hold_floor);
                CHECK(plan->core_curve[i].low >= food.standard.hold_floor);
            }
        }
    }
}

TEST_CASE("beside food that is cooked, what is kept hot changes neither its target nor its germs") {
    trip::Trip trip = small_trip();
    trip.foods = {food_of("chicken-breast", 30, 5, 65, 4)};
    const auto alone = plan::make_plan(trip, some());
    trip.foods.push_back(rice());
    const auto both = plan::make_plan(trip, some());
    REQUIRE(alone.ok());
    REQUIRE(both.ok());
    CHECK(both->foods[0].core_peak.high <= units::celsius(69) + units::kelvins(1e-9));
    CHECK(both->levels.floor >= alone->levels.floor);
    CHECK(any_event(*both, plan::Event::Kind::ready, 0));
    CHECK_FALSE(any_event(*both, plan::Event::Kind::ready, 1));
}

TEST_CASE("sittings: ready by the first, the bath holds until the last") {
    trip::Trip trip = small_trip();
    trip.foods = {food_of("chicken-breast", 30, 5, 65, 4)};
    trip.serve = units::LocalTime::from_civil(2027, 6, 12, 14, 0);
    const auto one = plan::make_plan(trip, some());
    trip.earlier_sittings = {units::minutes(90), units::minutes(30)};
    const auto several = plan::make_plan(trip, some());
    REQUIRE(one.ok());
    REQUIRE(several.ok());
    const plan::FoodPlan& food = several->foods.front();
    CHECK(food.due == trip.serve.after(-units::minutes(90)));
    CHECK(food.eaten == trip.serve);
    CHECK(food.ready() <= food.due);
    CHECK(several->fill.latest_food_in <= one->fill.latest_food_in);
    CHECK(any_event(*several, plan::Event::Kind::sitting, 0));
    CHECK(any_event(*several, plan::Event::Kind::sitting, 1));
    CHECK_FALSE(any_event(*one, plan::Event::Kind::sitting, 0));
    CHECK(several->around.sear.foods.front().pieces == 2);  // of six, for one of three sittings
    // A first sitting that comes before the food is ready refuses what one meal would allow.
    trip.earlier_sittings = {trip.serve.since(trip.from) - units::minutes(75)};
    const auto soon = plan::make_plan(trip, some());
    CHECK_FALSE(soon.ok());
    CHECK(support::count_code(soon.problems(), "not-ready-in-time") == 1);
}

TEST_CASE("what is finished over the fire is so for each sitting anew") {
    trip::Trip trip = small_trip();
    trip.foods = {food_of("venison", 30, 5, 62, 4)};
    trip.earlier_sittings = {units::minutes(60)};
    const auto plan = plan::make_plan(trip, some());
    REQUIRE(plan.ok());
    const plan::FoodPlan& food = plan->foods.front();
    REQUIRE(food.finishing);
    int finishes = 0;
    for (const plan::Event& event : plan->events) {
        if (event.kind == plan::Event::Kind::finish) {
            ++finishes;
            CHECK((event.at == food.leaves() || event.at == food.leaves().after(units::minutes(60))));
        }
    }
    CHECK(finishes == 2);
    CHECK(food.leaves().after(food.finishing->takes) == food.due);
}

TEST_CASE("food that is held for longer than is good for it is told so, and is no less safe") {
    trip::Trip trip = small_trip();
    trip.foods = {food_of("trout-farmed", 20, 5, 64, 3)};
    trip.serve = units::LocalTime::from_civil(2027, 6, 12, 14, 0);
    const auto plan = plan::make_plan(trip, some());
    REQUIRE(plan.ok());
    REQUIRE(plan->foods.front().held());
    CHECK(*plan->foods.front().held() > units::hours(1));
    CHECK(plan->foods.front().longest_for_texture == units::hours(1));
    REQUIRE(support::count_code(plan->notes, "held-long") == 1);
    for (const problem::Problem& note : plan->notes) {
        if (note.code == "held-long") {
            CHECK(note.severity == problem::Severity::note);
            CHECK(note.message.find("not unsafe") != std::string::npos);
            CHECK_FALSE(note.hint.empty());
        }
    }
    trip.foods = {food_of("beef-top-round", 20, 5, 62, 3)};  // for beef no figure is known
    const auto beef = plan::make_plan(trip, some());
    REQUIRE(beef.ok());
    CHECK(support::count_code(beef->notes, "held-long") == 0);
}
