// SPDX-License-Identifier: MIT
// A later fire is named where it spares wakings, and only then; hands and warming of the box take their time.
#include "plan/search/later_start.hpp"

#include "facts/facts.hpp"
#include "plan/advice/remedy.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("a later fire that spares a waking holds like any plan") {
    const plan::Plan& plan = support::demo_plan("trail-crew");
    REQUIRE(plan::wakes_of(plan) >= 1);
    const auto later = plan::later_start(plan);
    REQUIRE(later.has_value());
    CHECK(later->from > plan.trip->from);
    CHECK(later->wakes < plan::wakes_of(plan));
    trip::Trip changed = *plan.trip;
    changed.from = later->from;
    const auto again = plan::make_plan(changed, support::full_effort());
    REQUIRE(again.ok());
    CHECK(plan::wakes_of(*again) <= later->wakes);
}

TEST_CASE("a plan that lets the cook sleep names no later fire") {
    const plan::Plan& plan = support::demo_plan("class-day");
    CHECK(plan::wakes_of(plan) == 0);
    CHECK_FALSE(plan::later_start(plan).has_value());
}

TEST_CASE("every pour has its boil and the time of the hands, and a box that is warmed has one round more") {
    trip::Trip trip = support::demo_trip("class-day");
    const units::Duration round = trip.fire.boils_in + facts::facts().duration("pour.handling");
    for (const bool warmed : {false, true}) {
        trip.boxes[0].prewarmed = warmed;
        const auto plan = plan::make_plan(trip, support::full_effort());
        REQUIRE(plan.ok());
        CHECK(plan->round == round);
        for (std::size_t k = 0; k < plan->fill.pours.size(); ++k) {
            const double rounds = static_cast<double>(k + 1) + (warmed ? 1.0 : 0.0);
            CHECK(plan->fill.pours[k].at == trip.from.after(round * rounds));
        }
        CHECK((plan->fill.warming.si() > 0.0) == warmed);
        for (const plan::TopUp& top_up : plan->top_ups) {
            CHECK(top_up.light_fire == top_up.at.after(-round));
        }
    }
}

TEST_CASE("a top-up poured to water at its line leaves the box no fuller than it may be") {
    const trip::Trip winter = support::trip_at("tests/plan/trips/winter-high.toml");
    const auto winter_plan = plan::make_plan(winter, support::full_effort());
    REQUIRE(winter_plan.ok());
    for (const plan::Plan* plan : {&support::demo_plan("trail-crew"), &*winter_plan}) {
        const trip::Trip& trip = *plan->trip;
        CAPTURE(trip.name);
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const auto& box = trip.boxes[0].inside;
        int lines = 0;
        for (const plan::TopUp& top_up : plan->top_ups) {
            if (!top_up.below_rim) {
                continue;  // it fits as it is
            }
            ++lines;
            const double under = box[0].si() * box[1].si() * (box[2] - *top_up.below_rim).si() * 1e3;  // L
            CHECK(under + units::in_litres(top_up.boiling) <= units::in_litres(setup->most) + 1e-6);
        }
        CHECK(lines >= 1);
    }
}
