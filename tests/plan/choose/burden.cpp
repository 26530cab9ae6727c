// SPDX-License-Identifier: MIT
// What a plan asks of the cook: worked out by hand from the weights, and never less for more work.
#include "plan/search/burden.hpp"

#include "facts/facts.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using units::Duration;
using units::hours;
using units::minutes;

namespace {

/// From 16:00, sleep from 22:30 to 06:30, a fire that needs no fuel.
trip::Trip slept_in() {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.fire.fuel = facts::Fuel::none_needed;
    return trip;
}

double minutes_of(Duration d) {
    return d.si() / 60.0;
}

}  // namespace

TEST_CASE("by day each minute at the fire and each litre counts, and nobody is woken") {
    const plan::Burden burden =
        plan::burden_of(slept_in(), units::celsius(94), {{hours(1), hours(1) + minutes(40), units::litres(12)}});
    CHECK(burden.wakings == 0);
    CHECK(support::near_abs(minutes_of(burden.fire), 40.0, 1e-9));
    const double litre = facts::facts().value("burden.litre");
    CHECK(support::near_abs(minutes_of(burden.weight()), 40.0 + 12.0 * litre, 1e-9));
}

TEST_CASE("work that begins before bedtime and ends after rising is split at both") {
    // 22:00 to 07:00: half an hour before the night, eight hours in it, half an hour after.
    const plan::Burden burden =
        plan::burden_of(slept_in(), units::celsius(94), {{hours(6), hours(15), units::litres(0)}});
    CHECK(burden.wakings == 1);
    CHECK(support::near_abs(minutes_of(burden.fire), 60.0, 1e-9));
    CHECK(support::near_abs(minutes_of(burden.woken), 480.0, 1e-9));
    const facts::Facts& facts = facts::facts();
    CHECK(support::near_abs(minutes_of(burden.weight()),
                            60.0 + facts.value("burden.waking") + 480.0 * facts.value("burden.woken"), 1e-9));
}

TEST_CASE("at bedtime or on rising nobody is woken") {
    for (const Duration from : {hours(5.5), hours(14.5)}) {
        const plan::Burden burden =
            plan::burden_of(slept_in(), units::celsius(94), {{from, from + hours(1), units::litres(1)}});
        CHECK(burden.wakings == 0);
        CHECK(burden.woken == Duration{0});
    }
}

TEST_CASE("one act more never weighs less, whatever the fuel") {
    for (const facts::Fuel fuel :
         {facts::Fuel::wood, facts::Fuel::propane, facts::Fuel::butane, facts::Fuel::none_needed}) {
        trip::Trip trip = slept_in();
        trip.fire.fuel = fuel;
        std::vector<plan::Act> acts;
        Duration before{0};
        for (int i = 0; i < 10; ++i) {
            const Duration from = hours(2.0 * i);
            acts.push_back({from, from + minutes(30), units::litres(i)});
            const Duration now = plan::burden_of(trip, units::celsius(94), acts).weight();
            CHECK(now > before);
            before = now;
        }
    }
}

TEST_CASE("a plan whose food waits for hours weighs what it waits, and its schedule is lighter by that") {
    const plan::Plan& plan = support::demo_plan("paddling-day");
    const plan::Burden burden = plan::burden_of(plan);
    const Duration waits = plan.foods.front().leaves().since(plan.foods.front().ready());
    CHECK(burden.held == waits - facts::facts().duration("burden.slack"));
    plan::Burden without = burden;
    without.held = Duration{0};
    CHECK(support::near_abs(minutes_of(burden.weight() - without.weight()),
                            units::in_hours(burden.held) * facts::facts().value("burden.held"), 1e-6));
}

TEST_CASE("a mark out of reach of the pots is a burden") {
    plan::Plan plan = support::demo_plan("paddling-day");
    const Duration before = plan::burden_of(plan).weight();
    REQUIRE_FALSE(plan.mark_out_of_reach);
    plan.mark_out_of_reach = true;
    CHECK(plan::burden_of(plan).weight() == before + facts::facts().duration("burden.out-of-reach"));
}
