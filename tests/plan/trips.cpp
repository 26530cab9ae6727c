// SPDX-License-Identifier: MIT
// Five trips unlike the demos: heat by the sea, a night at -20 C and 3,000 m, two boxes, a poor box, no thermometer.
#include "support/trips.hpp"

#include "plan/advice/remedy.hpp"
#include "plan/result/boxes.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::near_abs;

namespace {

trip::Trip trip_of(const std::string& name) {
    return support::trip_at("tests/plan/trips/" + name + ".toml");
}

/// What every plan must be, whatever the trip.
void check_sense(const plan::Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    CHECK(plan.promise.share >= 0.95);
    CHECK(plan.fill.food_in > trip.from);
    CHECK(plan.fill.reading < plan.levels.boiling);
    CHECK(plan.fill.cold + plan.fill.boiled < plan.trip->boxes.front().water * 1.1);
    units::LocalTime last = plan.fill.food_in;
    for (const plan::TopUp& top_up : plan.top_ups) {
        CHECK(top_up.at > last);
        CHECK(top_up.at < trip.serve);
        CHECK(top_up.light_fire >= last);
        CHECK(top_up.boiling.si() > 0.0);
        last = top_up.at;
    }
    for (const plan::FoodPlan& food : plan.foods) {
        CHECK(food.ready() <= trip.serve);
        CHECK(food.kill.low >= 1.0);
        CHECK(food.core_peak.high <= food.food->target + food.food->tolerance + units::kelvins(1e-9));
    }
    for (std::size_t i = 1; i < plan.events.size(); ++i) {
        CHECK(plan.events[i].at >= plan.events[i - 1].at);
    }
}

}  // namespace

TEST_CASE("a hot windy day by the sea, one pot, rules of au-nz") {
    const trip::Trip trip = trip_of("hot-summer");
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    check_sense(*plan);
    CHECK(plan->levels.floor >= units::celsius(60));
    CHECK(near_abs(plan->levels.boiling.celsius(), 99.97, 0.05));
    REQUIRE(plan->around.ice.has_value());
}

TEST_CASE("a night at -20 C and 3,000 m: water boils at 90 C, the storm is answered") {
    const trip::Trip trip = trip_of("winter-high");
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    check_sense(*plan);
    CHECK(near_abs(plan->levels.boiling.celsius(), 89.98, 0.05));  // us-std-atm-1976 and IAPWS-IF97, computed
    REQUIRE(plan->what_ifs.size() == 2);
    CHECK(plan->what_ifs[0].holds);
    // The storm's plan has a mark of its own, a kelvin hotter at the most: never longer than calm weather grants there.
    const auto& rows = plan->night.unattended;
    REQUIRE(rows.size() > 1);
    // The rows end at what the box shows: a kelvin hotter is worth no more than from the second row to the first.
    CHECK(plan->what_ifs[0].longest < rows[0].longest + (rows[0].longest - rows[1].longest));
    CHECK(plan->what_ifs[0].top_ups >= plan->top_ups.size());
}

TEST_CASE("two boxes share the pots, each has its foods and its plan") {
    const trip::Trip trip = trip_of("two-boxes");
    const auto parts = plan::one_trip_a_box(trip);
    REQUIRE(parts.size() == 2);
    CHECK(parts[0].fire.pots + parts[1].fire.pots == trip.fire.pots);
    CHECK(parts[0].foods.size() == 1);
    CHECK(parts[1].foods.front().name == "chicken breasts");
    CHECK(parts[0].name.find("red box") != std::string::npos);
    for (const trip::Trip& part : parts) {
        const auto plan = plan::make_plan(part, support::without_tables());
        REQUIRE(plan.ok());
        check_sense(*plan);
    }
}

TEST_CASE("one pot for two boxes is halved; one box keeps its trip") {
    trip::Trip trip = trip_of("two-boxes");
    trip.fire.pots = 1;
    for (const trip::Trip& part : plan::one_trip_a_box(trip)) {
        CHECK(part.fire.pots == 1);
        CHECK(near_abs(part.fire.usable, trip.fire.usable / 2, 1e-12));
    }
    const trip::Trip single = trip_of("poor-box");
    const auto same = plan::one_trip_a_box(single);
    REQUIRE(same.size() == 1);
    CHECK(same.front().name == single.name);
}

TEST_CASE("a poor box asks for a top-up every hour or two, and fails when the fire is small") {
    trip::Trip trip = trip_of("poor-box");
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    check_sense(*plan);
    CHECK(plan->top_ups.size() >= 3);
    trip.fire.pots = 1;
    trip.fire.pot = units::litres(1.5);
    CHECK_FALSE(plan::make_plan(trip, support::without_tables()).ok());
}

TEST_CASE("no thermometer: measured litres that mix to what the plan wants, top-ups by the clock") {
    const trip::Trip trip = trip_of("no-thermometer");
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    check_sense(*plan);
    CHECK(plan->levels.floor >= units::celsius(57.2));
    // The likely mix by hand: litres measured boiling and cold, no losses, is a few kelvins above the planned reading.
    const double hot = 0.958 * units::in_litres(plan->fill.boiled);
    const double cold = units::in_litres(plan->fill.cold);
    const double mixed = (hot * plan->levels.boiling.celsius() + cold * trip.fire.cold_water.celsius()) / (hot + cold);
    CHECK(mixed > plan->fill.reading.celsius());
    CHECK(mixed < plan->fill.reading.celsius() + 8.0);
    CHECK(near_abs(cold + 0.958 * units::in_litres(plan->fill.boiled),
                   0.978 * units::in_litres(trip.boxes.front().water), 1.0));
}

TEST_CASE("a box test that is known worse never lets the cook be away longer") {
    for (const char* name : {"hot-summer", "winter-high"}) {
        CAPTURE(name);
        trip::Trip sure = trip_of(name);
        trip::Trip unsure = sure;
        sure.boxes.front().reading_error = units::kelvins(0.2);
        unsure.boxes.front().reading_error = units::kelvins(1.5);
        const plan::Effort quick = support::effort_of({128, 1}, {1024, 1});
        const auto a = plan::make_plan(sure, quick);
        const auto b = plan::make_plan(unsure, quick);
        REQUIRE(a.ok());
        if (!b) {
            continue;  // stricter cannot be
        }
        // One step of rounding is a quarter of an hour; the marks may differ, so the same reading is compared.
        CHECK(b->top_ups.size() >= a->top_ups.size());
        for (const plan::Unattended& row : a->night.unattended) {
            for (const plan::Unattended& other : b->night.unattended) {
                if (row.reading == other.reading) {
                    CHECK(other.longest <= row.longest + units::minutes(1));
                }
            }
        }
    }
}
