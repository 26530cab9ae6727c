// SPDX-License-Identifier: MIT
// On from here: what is behind stays as it was, what was seen is believed, and colder is never kinder.
#include "plan/replan/replan.hpp"

#include "plan/result/effort.hpp"
#include "plan/search/schedule.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using units::celsius;
using units::hours;
using units::minutes;

namespace {

/// A day with one top-up at least, its fire fixed, so that the plan in hand is known.
trip::Trip day() {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.light_fire = trip.from;
    return trip;
}

plan::Plan in_hand(const trip::Trip& trip) {
    plan::Effort effort = support::effort_of(plan::Effort{}.search, plan::full_draw());
    effort.schedule_only = true;
    return plan::make_plan(trip, effort).value();
}

plan::Found two_hours_on(const plan::Plan& plan, double reading) {
    plan::Found found;
    found.now = plan.fill.food_in.after(hours(2));
    found.reading = celsius(reading);
    return found;
}

}  // namespace

TEST_CASE("as it was expected, the meal holds, and what is behind is not poured again") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    REQUIRE_FALSE(before.top_ups.empty());
    const auto found = two_hours_on(before, 69);
    const auto on = plan::replan(trip, found);
    REQUIRE(on.ok());
    CHECK(on->later == units::Duration{0});
    CHECK(on->plan.fill.food_in == before.fill.food_in);
    for (const plan::TopUp& top_up : on->plan.top_ups) {
        CHECK((top_up.at > found.now || top_up.at == before.top_ups.front().at));
    }
}

TEST_CASE("little over the action line it is topped up as soon as the pots boil, at it that is too late") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    const plan::Found found = two_hours_on(before, before.levels.action_line.celsius() + 2.0);
    const auto on = plan::replan(trip, found);
    REQUIRE(on.ok());
    REQUIRE_FALSE(on->plan.top_ups.empty());
    const plan::TopUp& first = on->plan.top_ups.front();
    CHECK(first.light_fire >= found.now);
    CHECK(first.at <= found.now.after(before.round + minutes(45)));
    // The plan has its pots on by then.
    const auto cold = plan::replan(trip, two_hours_on(before, before.levels.read_floor.celsius() + 0.5));
    REQUIRE_FALSE(cold.ok());
    CHECK(support::has_code(cold.problems(), "replan-too-cold"));
}

TEST_CASE("a colder reading makes no food ready sooner, no meal sooner and no pour later") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    std::optional<units::LocalTime> ready;
    std::optional<units::LocalTime> pour;
    for (const double reading : {74.0, 71.0, 68.0, 66.0}) {
        CAPTURE(reading);
        const auto on = plan::replan(trip, two_hours_on(before, reading));
        REQUIRE(on.ok());
        const units::LocalTime now = on->plan.foods.front().ready();
        CHECK((!ready || now >= ready->after(-minutes(5))));  // a hotter top-up may make up for minutes of it
        ready = now;
        if (!on->plan.top_ups.empty()) {
            CHECK((!pour || on->plan.top_ups.front().at <= *pour));
            pour = on->plan.top_ups.front().at;
        }
    }
}

TEST_CASE("under the floor nothing is promised, before food is in and after the meal there is nothing to plan") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    const auto code_of = [&](plan::Found found) {
        const auto on = plan::replan(trip, found);
        REQUIRE_FALSE(on.ok());
        return std::string(on.problems().front().code.text());
    };
    CHECK(code_of(two_hours_on(before, before.levels.read_floor.celsius() - 1.0)) == "replan-below-floor");
    plan::Found early = two_hours_on(before, 70);
    early.now = before.fill.food_in.after(-minutes(10));
    CHECK(code_of(early) == "replan-before-food");
    plan::Found late = two_hours_on(before, 70);
    late.now = trip.serve;
    CHECK(code_of(late) == "replan-after-meal");
    plan::Found cold = two_hours_on(before, 70);
    cold.core = celsius(10);
    CHECK(code_of(cold) == "replan-core");
}

TEST_CASE("food that went in late is ready later by about as much, and the meal moves where it must") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    plan::Found found = two_hours_on(before, 70);
    const auto usual = plan::replan(trip, found);
    found.food_in = before.fill.food_in.after(minutes(90));
    const auto late = plan::replan(trip, found);
    REQUIRE(usual.ok());
    REQUIRE(late.ok());
    const double by = late->plan.foods.front().ready().since(usual->plan.foods.front().ready()).si() / 60.0;
    CHECK(by > 45.0);
    CHECK(by < 135.0);
}

TEST_CASE("a lower level holds less heat: it is never longer until the next pour") {
    const trip::Trip trip = day();
    const plan::Plan before = in_hand(trip);
    plan::Found found = two_hours_on(before, 66);
    const auto usual = plan::replan(trip, found);
    found.below_rim = units::millimetres(150);
    const auto low = plan::replan(trip, found);
    REQUIRE(usual.ok());
    REQUIRE(low.ok());
    REQUIRE_FALSE(low->plan.top_ups.empty());
    CHECK((usual->plan.top_ups.empty() || low->plan.top_ups.front().at <= usual->plan.top_ups.front().at));
}

TEST_CASE("seen in every scenario, the bath reads what was read, and the replay goes on from there") {
    const trip::Trip trip = day();
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, {32, 1});
    plan::Schedule schedule = plan::make_schedule(ensemble).value();
    schedule.top_ups.clear();
    const units::Duration at = hours(3);
    schedule.seen = plan::SeenBath{at, celsius(66), std::nullopt};
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        const plan::Simulation run = plan::replay(ensemble, schedule, i, true);
        const double error = (run.shown() - run.bath().temperature()).si();
        CHECK(support::near_abs(run.bath().bath_history().at(at + minutes(1)).celsius() + error, 66.0, 0.3));
    }
}
