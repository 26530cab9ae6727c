// SPDX-License-Identifier: MIT
// The thickest piece that a plan prints is never thinner than the trip's own, which the plan allows.
#include "plan/advice/remedy.hpp"
#include "plan/result/hold_table.hpp"
#include "support/efforts.hpp"
#include "support/few_ways.hpp"
#include "support/trips.hpp"
#include "units/print.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

namespace {

plan::Effort quick() {
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.for_cards = true;
    return effort;
}

/// A long day in a good box, for pieces that take all of it.
trip::Trip long_day(facts::Shape shape, double millimetres) {
    trip::Trip trip = support::demo_trip("template");
    trip.serve = trip.from.after(units::hours(22));
    trip.sleep.reset();
    trip.boxes[0].test = units::HeatLoss{0.5};
    trip::Food& food = trip.foods[0];
    food.shape = shape;
    food.pieces = 1;
    food.tolerance = units::kelvins(6);
    food.thickness = units::millimetres(millimetres);
    food.width = shape == facts::Shape::block ? std::optional(food.thickness * 1.05) : std::nullopt;
    food.length = shape == facts::Shape::ball ? std::nullopt : std::optional(food.thickness * 1.6);
    food.mass = units::kilograms(1060.0 * millimetres * millimetres * millimetres * 1.4e-9);
    return trip;
}

}  // namespace

TEST_CASE("the thickest piece for a bath is never thinner than the trip's own, which is allowed there") {
    const facts::FactsInForce few_ways(support::facts_of_few_ways());
    int plans = 0;
    int by_table_found = 0;
    for (const facts::Shape shape : {facts::Shape::block, facts::Shape::round}) {
        for (const double millimetres : {60.0, 82.55, 100.0, 112.0, 120.0, 126.4}) {
            CAPTURE(millimetres);
            const trip::Trip trip = long_day(shape, millimetres);
            const auto plan = plan::make_plan(trip, quick());
            if (!plan.ok()) {
                continue;
            }
            ++plans;
            const plan::FoodPlan& food = plan->foods.front();
            REQUIRE(food.thickest.has_value());
            const auto printed = [](units::Length l, units::Toward toward) {
                return units::print(l, units::System::metric, {1.0, toward});
            };
            CHECK(*food.thickest >= units::millimetres(millimetres - 0.5));
            CHECK(std::stod(printed(*food.thickest, units::Toward::down)) >=
                  std::stod(printed(food.food->thickness, units::Toward::nearest)));
            const auto by_table = plan::thickest(*plan, food, food.hold.baths.front());
            CHECK((!by_table || *food.thickest >= *by_table));
            by_table_found += by_table ? 1 : 0;
        }
    }
    CHECK(plans >= 5);
    CHECK(by_table_found >= 5);  // else this has shown nothing
}
