// SPDX-License-Identifier: MIT
// Foods of one bath that go in and come out at times of their own.
#include "plan/advice/remedy.hpp"
#include "plan/search/recipe.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using support::near_abs;
using support::near_rel;
using units::Duration;

namespace {

/// Chicken for supper, pork for the next noon, out of one box with three pots.
trip::Trip two_meals() {
    return support::trip_at("tests/plan/trips/two-meals.toml");
}

}  // namespace

TEST_CASE("supper comes out, the next meal's meat goes in, and both are ready in time") {
    const trip::Trip trip = two_meals();
    const auto plan = plan::make_plan(trip, support::effort_of({128, 1}, {1024, 1}));
    REQUIRE(plan.ok());
    REQUIRE(plan->foods.size() == 2);
    const plan::FoodPlan& chicken = plan->foods[0];
    const plan::FoodPlan& pork = plan->foods[1];
    CHECK(chicken.in == plan->fill.food_in);
    CHECK(chicken.eaten == *trip.foods[0].out);
    CHECK(pork.in == *trip.foods[1].in);
    CHECK(pork.eaten == trip.serve);
    CHECK(chicken.ready() <= chicken.eaten);
    CHECK(pork.ready() <= pork.eaten);
    CHECK(pork.ready_likely.value() > pork.in);
    CHECK(chicken.kill.low >= 1.0);
    CHECK(pork.kill.low >= 1.0);
    CHECK(plan->levels.floor >=
          units::celsius(60));  // the strictest food's, all the time: nobody changes cards at supper
    using Kind = plan::Event::Kind;
    const auto count = [&](Kind kind) {
        return std::count_if(plan->events.begin(), plan->events.end(), [&](const auto& e) { return e.kind == kind; });
    };
    CHECK(count(Kind::food_in) == 2);
    CHECK(count(Kind::take_out) == 1);
    CHECK_FALSE(plan::all_in_at_once(*plan));
    CHECK(plan::names_at(*plan, &plan::FoodPlan::in, pork.in) == "pork loin, boneless");
    REQUIRE(plan->around.earlier.size() == 1);
    CHECK(plan->around.earlier[0].serve == chicken.eaten);
    CHECK(plan->around.earlier[0].sear.foods.front().name == "chicken breast");
    CHECK(plan->around.sear.foods.size() == 1);
    CHECK(plan->around.portions.raw.si() < trip.foods[0].mass.si() * 4 + trip.foods[1].mass.si() * 2);
}

TEST_CASE("a food's own times are the moments at which the run moves it, and its core stops there") {
    trip::Trip trip = two_meals();
    trip.boxes[0].water = units::litres(30);  // so that the two differ
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Scenario likely = plan::likely_scenario();
    std::vector<heat::FoodInBath> foods;
    for (const plan::FoodSetup& food : setup->foods) {
        foods.push_back(plan::food_in(food, likely));
    }
    plan::Simulation run(*setup, likely, foods, true);
    const auto recipe = plan::recipe_for(*setup, units::celsius(72));
    REQUIRE(recipe.has_value());
    const double empty = run.bath().stored_energy();
    run.fill(*recipe);
    CHECK(run.core_history(1).empty());
    const units::Volume before = run.room() + run.bath().water();
    const Duration end = trip.serve.since(trip.from);
    run.advance_to(end);
    const Duration out = setup->foods[0].out;
    const Duration in = *setup->foods[1].in;
    CHECK(near_abs(run.core_history(0).points.front().at.si(), run.food_in().si(), 1e-6));
    CHECK(near_abs(run.core_history(0).points.back().at.si(), out.si(), 1e-6));
    CHECK(near_abs(run.core_history(1).points.front().at.si(), in.si(), 1e-6));
    CHECK(near_abs(run.core_history(1).points.back().at.si(), end.si(), 1e-6));
    CHECK(near_abs((run.room() + run.bath().water() - before).si(), setup->foods[0].volume.si(), 1e-9));
    // Cold meat cools the bath at once, food that leaves does not.
    const units::History& bath = run.bath().bath_history();
    CHECK((bath.at(in + units::minutes(20)) - bath.at(in - units::minutes(1))).si() < -1.0);
    CHECK(std::abs((bath.at(out + units::minutes(1)) - bath.at(out - units::minutes(1))).si()) < 0.6);
    // Heat: all that is poured, taken out and lost is accounted for.
    const heat::Ledger& ledger = run.bath().ledger();
    CHECK(near_rel(ledger.poured,
                   run.bath().stored_energy() - empty + ledger.lost_to_outside + ledger.lost_by_lid + ledger.taken_out,
                   1e-9));
}

TEST_CASE("meat that goes in too late for its meal is refused, at its own line") {
    trip::Trip trip = two_meals();
    trip.foods[1].in = trip.serve.after(units::minutes(-30));
    const auto plan = plan::make_plan(trip, support::effort_of({128, 1}, {1024, 1}));
    REQUIRE_FALSE(plan.ok());
    CHECK(plan.problems().front().message.find("pork loin, boneless: ") == 0);
    trip = two_meals();
    trip.foods[0].out = trip.from.after(units::minutes(90));
    const auto hasty = plan::make_plan(trip, support::effort_of({128, 1}, {1024, 1}));
    REQUIRE_FALSE(hasty.ok());
    CHECK(hasty.problems().front().place->line == trip.foods[0].out_place.line);
}

TEST_CASE("a company of foods that the water does not cover when one is gone is refused") {
    trip::Trip trip = two_meals();
    trip.boxes.front().water = units::litres(11);
    const auto plan = plan::make_plan(trip, support::effort_of({128, 1}, {1024, 1}));
    REQUIRE_FALSE(plan.ok());
    const auto& problems = plan.problems();
    CHECK(std::any_of(problems.begin(), problems.end(),
                      [](const auto& p) { return p.code == problem::Code("food-not-covered"); }));
}
