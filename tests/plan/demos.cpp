// SPDX-License-Identifier: MIT
// The demo trips: the promises of a plan, looked at from outside the planner.
#include "facts/facts.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/burden.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

namespace {

void keeps_its_promises(const plan::Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    CHECK(plan.promise.share >= 0.95);
    CHECK(plan.fill.food_in < trip.serve);
    CHECK(plan.fill.latest_food_in >= plan.fill.food_in);
    for (const plan::FoodPlan& food : plan.foods) {
        CHECK(food.ready_likely.value() <= food.ready());
        CHECK(food.ready() <= trip.serve);
        CHECK(food.core_peak.high <= food.food->target + food.food->tolerance + units::kelvins(1e-6));
        CHECK(food.kill.low >= 1.0);
        CHECK(food.come_up.high.value() < units::hours(6));
    }
    const units::Volume batch = trip.fire.pot * (trip.fire.usable * trip.fire.pots);
    units::LocalTime last = plan.fill.food_in;
    for (const plan::TopUp& top_up : plan.top_ups) {
        CHECK(top_up.at > last);
        CHECK(top_up.boiling_most <= batch + units::litres(1e-6));
        CHECK(top_up.light_fire >= last);
        last = top_up.at;
    }
    // Heat of the fill: what was poured cold and boiling gives about the reading (liner and losses take a few kelvin).
    const double cold = units::in_litres(plan.fill.cold);
    const double hot = units::in_litres(plan.fill.boiled);
    // By mass: a litre of boiling water is 0.958 kg, one at 70 C 0.978 kg (computed from IAPWS-IF97).
    CAPTURE(trip.name);
    CAPTURE(cold);
    CAPTURE(hot);
    // Half a litre of cold water moves the whole fill by more than a litre: as near as litres are poured anyway.
    const double full = units::in_litres(trip.boxes.front().water);
    const double near_full = std::max(1.0, full * (facts::facts().spread("litres").high - 1.0));
    CHECK(support::near_abs(cold + 0.958 * hot, 0.978 * full, near_full));
    const double mixed = (cold * trip.fire.cold_water.celsius() + hot * plan.levels.boiling.celsius()) / (cold + hot);
    CHECK(mixed >= plan.fill.reading.celsius());
    CHECK(mixed <= plan.fill.reading.celsius() + 12.0);
    for (std::size_t i = 1; i < plan.ladder.size(); ++i) {
        CHECK(plan.ladder[i].pour >= plan.ladder[i - 1].pour);
        CHECK(plan.ladder[i].below_rim >= plan.ladder[i - 1].below_rim);
    }
}

}  // namespace

TEST_CASE("each demo trip has a plan that keeps its promises") {
    for (const char* name : {"trail-crew", "hut-night", "paddling-day", "class-day"}) {
        CAPTURE(name);
        keeps_its_promises(support::demo_plan(name));
    }
}

TEST_CASE("the demo of a day asks for no top-up, that of a night wakes nobody") {
    const plan::Plan& day = support::demo_plan("trail-crew");
    CHECK(day.top_ups.empty());
    CHECK(day.foods.front().ready() < day.trip->serve);
    const plan::Plan& night = support::demo_plan("hut-night");
    CHECK(plan::wakes_of(night) == 0);
    CHECK(night.trip->serve.since(night.fill.food_in) > units::hours(8));
}

TEST_CASE("the same trip gives the same plan") {
    const trip::Trip trip = support::demo_trip("paddling-day");
    const auto a = plan::make_plan(trip);
    const auto b = plan::make_plan(trip);
    REQUIRE(a.ok());
    REQUIRE(b.ok());
    CHECK(a->promise.share == b->promise.share);
    CHECK(a->fill.reading == b->fill.reading);
    CHECK(a->bath_curve.back().low == b->bath_curve.back().low);
}

TEST_CASE("hold times: thicker is never sooner, a hotter bath never later") {
    const plan::Plan& plan = support::demo_plan("trail-crew");
    const plan::FoodPlan& food = plan.foods.front();
    for (double bath = 58; bath <= 68; bath += 2) {
        std::optional<units::Duration> thinner;
        for (double mm = 20; mm <= 120; mm += 10) {
            const auto hold = plan::safe_hold(plan, food, units::millimetres(mm), units::celsius(bath));
            const auto hotter = plan::safe_hold(plan, food, units::millimetres(mm), units::celsius(bath + 1));
            if (thinner && hold) {
                CHECK(*hold >= *thinner);
            }
            if (hold) {
                REQUIRE(hotter.has_value());
                CHECK(*hotter <= *hold + units::minutes(0.01));
            }
            thinner = hold;
        }
    }
}
