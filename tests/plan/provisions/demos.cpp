// SPDX-License-Identifier: MIT
// The demo trips, from the file to all that lies around the box; and trips that leave parts of it out.
#include "plan/provisions/provisions.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "support/borrowed.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace holdwater;

TEST_CASE("every demo trip gets all that its file asks for") {
    for (const char* name : {"trail-crew", "hut-night", "paddling-day", "class-day"}) {
        CAPTURE(name);
        const plan::Plan& plan = support::demo_plan(name);
        const trip::Trip& trip = *plan.trip;
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const plan::Provisions around = plan::provisions_of(*setup, plan);
        CHECK(around.fuel.has_value());
        CHECK(around.ice.has_value());
        CHECK(around.sides.list.size() == trip.sides.size());
        CHECK(around.leftovers.slices.size() == 6);
        CHECK(around.sear.take_out < trip.serve);
        CHECK(around.water.fetch > around.water.cold);
        CHECK(around.water.boil_most >= around.water.boil_likely);
        // Slush is colder than any summer air and takes heat away faster than snow.
        for (const answer::ThickestSlice& slice : around.leftovers.slices) {
            if (slice.medium == answer::Medium::slush) {
                CHECK(slice.thickest.has_value());
            }
            if (slice.medium == answer::Medium::still_air && around.leftovers.air >= units::celsius(5)) {
                CHECK_FALSE(slice.thickest.has_value());
            }
        }
        CHECK(around.leftovers.slices[0].thickest > around.leftovers.slices[4].thickest);
    }
}

TEST_CASE("a trip without journey, sides, moisture and with no fuel to carry leaves them out") {
    trip::Trip trip = support::demo_trip("class-day");
    trip.journey.reset();
    trip.sides.clear();
    trip.fire.moisture.reset();
    trip.fire.fuel = facts::Fuel::none_needed;
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const auto plan = plan::make_plan(trip, support::without_tables());
    REQUIRE(plan.ok());
    const plan::Provisions around = plan::provisions_of(*setup, *plan);
    CHECK_FALSE(around.ice.has_value());
    CHECK_FALSE(around.fuel.has_value());
    CHECK(around.sides.list.empty());
    CHECK(around.sides.clashes.empty());
    CHECK_FALSE(support::has_code(around.notes, "side-clash"));
    CHECK_FALSE(support::has_code(around.notes, "ice-does-not-fit"));
}

TEST_CASE("leftovers reckon with the warmest air until they are cold, and the spread of the forecast") {
    trip::Trip trip = support::demo_trip("trail-crew");
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(-18)}};
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    plan::Plan any;
    any.trip = support::borrowed(trip);
    any.levels.boiling = setup->levels.boiling;
    const plan::Provisions cold = plan::provisions_of(*setup, any);
    CHECK(support::near_abs(cold.leftovers.air.celsius(), -15.0, 1e-9));
    REQUIRE(cold.leftovers.slices[2].thickest.has_value());
    // Colder still air never asks for a thinner slice.
    trip.weather.hours = std::vector<trip::Weather::Daily>{{{0}, units::celsius(-8)}};
    const auto milder_setup = plan::set_up(trip);
    REQUIRE(milder_setup.ok());
    const plan::Provisions milder = plan::provisions_of(*milder_setup, any);
    CHECK(milder.leftovers.slices[2].thickest < cold.leftovers.slices[2].thickest);
}

TEST_CASE("two foods keep to the thinner slice of both") {
    trip::Trip trip = support::demo_trip("trail-crew");
    const auto thinnest = [](const trip::Trip& one) {
        const auto setup = plan::set_up(one);
        REQUIRE(setup.ok());
        plan::Plan any;
        any.trip = support::borrowed(one);
        any.levels.boiling = setup->levels.boiling;
        return plan::provisions_of(*setup, any).leftovers.slices[0].thickest;
    };
    const auto lean = thinnest(trip);
    trip::Trip fat = trip;
    fat.foods.front().kind = "pork-loin-fat";
    const auto fatty = thinnest(fat);
    trip.foods.push_back(fat.foods.front());
    for (trip::Food& food : trip.foods) {
        food.pieces = 1;
    }
    CHECK(thinnest(trip) == std::min(lean, fatty));
}
