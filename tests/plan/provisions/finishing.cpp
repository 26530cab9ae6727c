// SPDX-License-Identifier: MIT
// Finishing over the fire has its time in the plan, and what grew in a slow core decides when it is ready.
#include "plan/provisions/finishing.hpp"

#include "plan/advice/remedy.hpp"
#include "plan/result/boxes.hpp"
#include "plan/search/setup.hpp"
#include "support/borrowed.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using support::near_abs;
using Kind = plan::Event::Kind;

namespace {

trip::Trip stuffed() {
    return support::trip_at("tests/card/trips/stuffed-chicken.toml");
}

problem::Result<plan::Plan> planned(const trip::Trip& trip) {
    return plan::make_plan(trip, support::effort_of({128, 1}, {256, 1}));
}

const plan::Event& event_of(const plan::Plan& plan, Kind kind) {
    const auto found =
        std::find_if(plan.events.begin(), plan.events.end(), [kind](const plan::Event& e) { return e.kind == kind; });
    REQUIRE(found != plan.events.end());
    return *found;
}

}  // namespace

TEST_CASE("what is finished over the fire leaves the bath early enough, and its water is on before") {
    const trip::Trip trip = stuffed();
    const auto plan = planned(trip);
    REQUIRE(plan.ok());
    const plan::FoodPlan& food = plan->foods.front();
    REQUIRE(food.standard.finish.has_value());
    REQUIRE(food.finishing.has_value());
    const plan::Finishing& finishing = *food.finishing;
    CHECK_FALSE(food.finished_for_growth);
    // A fillet of 40 mm takes a quarter of an hour and more.
    CHECK(finishing.one.simmering > units::minutes(15));
    CHECK(finishing.takes >= finishing.one.longest() + units::minutes(facts::facts().value("finish.handling")));
    CHECK(food.leaves() == food.eaten.after(-finishing.takes));
    CHECK(food.ready() <= food.leaves());
    CHECK(finishing.light_fire == food.leaves().after(-plan->round));
    CHECK(event_of(*plan, Kind::boil_finish).at == finishing.light_fire);
    CHECK(event_of(*plan, Kind::finish).at == food.leaves());
    CHECK(event_of(*plan, Kind::finish).at < event_of(*plan, Kind::serve).at);
    CHECK(plan->fill.latest_food_in.since(plan->fill.food_in) <= food.leaves().since(food.ready()));
    // Its water is boiled too.
    CHECK(finishing.water > units::litres(2));
    CHECK(plan->around.water.boil_likely >= plan->fill.boiled + finishing.water);
}

TEST_CASE("more than the pots take at once is finished in lots, and leaves so much sooner") {
    trip::Trip trip = stuffed();
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const auto timed = [&](int pots, int sides) {
        trip.fire.pots = pots;
        trip.sides.assign(static_cast<std::size_t>(sides), {"rice", units::minutes(20)});
        plan::Plan plan;
        plan.trip = support::borrowed(trip);
        plan::FoodPlan food;
        food.food = setup->foods.front().food;
        food.piece = setup->foods.front().piece;
        food.standard = setup->foods.front().standard;
        food.eaten = trip.serve;
        plan.foods.push_back(food);
        plan::time_finishing(*setup, plan);
        return plan.foods.front().finishing.value();
    };
    // 1.6 kg of chicken; a pot of 8 L, 0.8 of it used, a third of that for food: 2.1 L.
    const plan::Finishing one = timed(1, 0);
    CHECK(one.lots == 1);
    trip.fire.pot = units::litres(4);
    CHECK(timed(1, 0).lots == 2);
    CHECK(timed(2, 0).lots == 1);
    CHECK(timed(2, 1).lots == 2);  // a side dish has the other pot
    CHECK(near_abs(timed(1, 0).takes.si(), 2.0 * one.takes.si(), 1e-6));
    CHECK(timed(1, 0).out < one.out);
}

TEST_CASE("the pots of a finish are missing where bath water boils at the same time") {
    const trip::Trip trip = stuffed();
    const auto made = planned(trip);
    REQUIRE(made.ok());
    plan::Plan plan = *made;
    REQUIRE(plan::sides_of(plan).clashes.empty());
    plan::TopUp top_up;
    top_up.light_fire = plan.foods.front().leaves().after(units::minutes(-10));
    top_up.at = top_up.light_fire.after(plan.round);
    top_up.boiling_most = trip.fire.pot * (trip.fire.usable * trip.fire.pots);
    plan.top_ups.push_back(top_up);
    const plan::Sides sides = plan::sides_of(plan);
    REQUIRE(sides.clashes.size() == 1);
    CHECK(sides.clashes.front().needed == trip.fire.pots + plan.foods.front().finishing->pots);
    CHECK(sides.clashes.front().sides.front() == "stuffed chicken breasts");
    CHECK(support::has_code(sides.notes, "side-clash"));
}

TEST_CASE("a meal that the bath alone would make is too soon for the fire") {
    trip::Trip trip = stuffed();
    const auto plan = planned(trip);
    REQUIRE(plan.ok());
    // Ready in the bath at the meal, not before the fire begins.
    trip.serve = plan->foods.front().ready().after(units::minutes(5));
    const auto late = planned(trip);
    REQUIRE_FALSE(late.ok());
    CHECK(support::has_code(late.problems(), "not-ready-in-time"));
}

TEST_CASE("where no water boils hot enough, there is no finish") {
    const trip::Trip trip = stuffed();
    const auto made = plan::set_up(trip);
    REQUIRE(made.ok());
    plan::Setup setup = *made;
    setup.levels.boiling = units::celsius(74.5);
    plan::FoodPlan food;
    food.food = setup.foods.front().food;
    food.piece = setup.foods.front().piece;
    food.standard = setup.foods.front().standard;
    CHECK_FALSE(plan::finish_time_of(setup, food).has_value());
    setup.levels.boiling = units::celsius(95);
    CHECK(plan::finish_time_of(setup, food).has_value());
}

TEST_CASE("two foods of one meal share the pots and leave together; another meal has its own") {
    trip::Trip trip = support::trip_at("tests/card/trips/minced-two-foods.toml");
    const auto plan = planned(trip);
    REQUIRE(plan.ok());
    CHECK(plan->foods[0].finishing.has_value());
    CHECK_FALSE(plan->foods[1].finishing.has_value());
    CHECK(plan->foods[1].leaves() == plan->foods[1].for_the_pan);
    trip.foods[1].cut = facts::Cut::minced;
    trip.foods[1].thickness = trip.foods[0].thickness;
    const auto both = planned(trip);
    REQUIRE(both.ok());
    REQUIRE(both->foods[1].finishing.has_value());
    CHECK(both->foods[0].finishing->out == both->foods[1].finishing->out);
    CHECK(std::count_if(both->events.begin(), both->events.end(),
                        [](const plan::Event& e) { return e.kind == Kind::boil_finish; }) == 1);
}

TEST_CASE("two boxes over one fire: no pot is promised twice, and one pot is used in turns") {
    trip::Trip trip = support::trip_at("tests/plan/trips/two-boxes.toml");
    for (trip::Food& food : trip.foods) {
        food.cut = facts::Cut::stuffed;
        food.thickness = units::millimetres(30);
    }
    const auto timed = [&](int pots, int sides) {
        trip.fire.pots = pots;
        trip.sides.assign(static_cast<std::size_t>(sides), {"rice", units::minutes(20)});
        std::vector<plan::Finishing> both;
        for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
            const auto setup = plan::set_up(part);
            REQUIRE(setup.ok());
            plan::Plan plan;
            plan.trip = support::borrowed(part);
            plan::FoodPlan food;
            food.food = setup->foods.front().food;
            food.piece = setup->foods.front().piece;
            food.standard = setup->foods.front().standard;
            food.eaten = part.serve;
            plan.foods.push_back(food);
            plan::time_finishing(*setup, plan);
            both.push_back(plan.foods.front().finishing.value());
        }
        return both;
    };
    for (int pots = 2; pots <= 6; ++pots) {
        for (int sides = 0; sides <= 4; ++sides) {
            CAPTURE(pots);
            CAPTURE(sides);
            const auto both = timed(pots, sides);
            const int left = std::max(1, pots - sides);
            CHECK((left == 1 || both[0].pots + both[1].pots <= left));
        }
    }
    // In turns both boxes give up their food by the same moment, with the potfuls of both before the meal.
    const auto turns = timed(1, 0);
    CHECK(turns[0].lots == turns[1].lots);
    CHECK(turns[0].out == turns[1].out);
    CHECK(turns[0].lots >= 2);
}
