// SPDX-License-Identifier: MIT
// What cooks commonly do with a box near freezing. Common practice without a source: the planner agrees, or shows why
// it asks for more.
#include "plan/advice/remedy.hpp"
#include "plan/result/night.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace holdwater;
using units::celsius;

namespace {

/// A small box, well kept, in still air near freezing; whole red meat under the rules of the us.
trip::Trip small_box(double hours) {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.foods[0].thickness = units::millimetres(60);
    trip.foods[0].mass = trip.foods[0].mass * (60.0 * 60.0 / 85.0 / 85.0);
    trip.foods[0].pieces = 1;
    trip.foods[0].target = celsius(60);
    trip.foods[0].tolerance = units::kelvins(4);
    trip.boxes[0].water = units::litres(20);
    trip.boxes[0].inside = {units::millimetres(400), units::millimetres(280), units::millimetres(280)};
    trip.boxes[0].test = units::HeatLoss{0.85};  // 20 L at 60 C in freezing air fall by about 5.5 K in 2.5 h
    trip.boxes[0].prewarmed = true;
    trip.weather.wind = facts::Wind::still;
    for (auto& hour : std::get<std::vector<trip::Weather::Daily>>(trip.weather.hours)) {
        hour.air = celsius(1);
    }
    trip.sleep.reset();
    trip.serve = trip.from.after(units::hours(hours));
    return trip;
}

}  // namespace

TEST_CASE("a small box near freezing is topped up about twice in the first seven and a half hours") {
    const trip::Trip trip = small_box(9.0);
    const auto plan = plan::make_plan(trip, support::full_effort());
    REQUIRE(plan.ok());
    const units::LocalTime end = plan->fill.food_in.after(units::hours(7.5));
    const auto count = std::count_if(plan->top_ups.begin(), plan->top_ups.end(),
                                     [&](const plan::TopUp& top_up) { return top_up.at <= end; });
    CHECK(count >= 1);
    CHECK(count <= 3);  // one more at the most: it promises for 95 of 100 boxes, and keeps the action line
}

TEST_CASE(
    "a box filled to 65.5 C at bedtime is not left until morning with food under the floor: it says how long it may "
    "be") {
    const trip::Trip trip = small_box(20.0);
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {256, 1});
    const auto schedule = plan::make_schedule(ensemble);
    REQUIRE(schedule.has_value());
    const units::Duration alone = plan::LeftBoxes(ensemble, *schedule).after_reading(celsius(65.5));
    CHECK(alone > units::hours(2.5));
    CHECK(alone < units::hours(8));  // a night
    // Why: by the morning the likely bath is under the floor, and the slow end of the spread only just above it.
    const double water = units::in_litres(trip.boxes[0].water) * 0.98 * 4180.0;
    const double hours = 8.0;
    const double likely = 1.0 + 64.5 * std::exp(-0.85 * hours * 3600.0 / (water + setup->liner.si() + 1500.0));
    CHECK(likely < setup->levels.floor.celsius());
}

TEST_CASE("asked to sleep from bedtime to morning, the plan wakes the cook or refuses, never lets the bath fall") {
    trip::Trip trip = small_box(16.0);
    trip.sleep = trip::Sleep{{22 * 3600 + 1800}, {6 * 3600 + 1800}};
    const auto plan = plan::make_plan(trip, support::full_effort());
    if (!plan) {
        CHECK(problem::has_error(plan.problems()));
        return;
    }
    CHECK(plan->night.wake.has_value());
    CHECK(plan->night.longest < units::hours(8));
    CHECK(plan->promise.share >= 0.95);
}
