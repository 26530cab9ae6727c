// SPDX-License-Identifier: MIT
// What grew in a core while it warmed must be dead when it is called ready.
#include "plan/advice/remedy.hpp"
#include "plan/search/scenario_result.hpp"
#include "plan/search/setup.hpp"
#include "safety/clocks.hpp"
#include "safety/net_growth.hpp"
#include "support/efforts.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using support::near_abs;

namespace {

constexpr plan::Draw few{128, 1};

/// A slow roast: thick, lying on the floor of the box, in a bath not far above its target.
trip::Trip roast(double mm, double target, double hours) {
    trip::Trip trip = support::trip_at("tests/card/trips/at-risk-beef.toml");
    trip.at_risk = false;
    trip.serve = trip.from.after(units::hours(hours));
    trip::Food& food = trip.foods.front();
    food.thickness = units::millimetres(mm);
    food.target = units::celsius(target);
    food.tolerance = units::kelvins(6);
    food.pieces = 2;
    food.mass = units::kilograms(1.0);
    return trip;
}

problem::Result<plan::Plan> planned(const trip::Trip& trip) {
    return plan::make_plan(trip, support::effort_of(few, {256, 1}));
}

}  // namespace

TEST_CASE("in every scenario ready is the first moment with the kill met and nothing left, worked out anew") {
    const trip::Trip trip = roast(70, 60, 12);
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, few);
    const auto schedule = plan::make_schedule(ensemble);
    REQUIRE(schedule.has_value());
    const auto results = plan::simulate(ensemble, *schedule);
    const facts::GrowthModel& beef = facts::facts().growth("beef");
    int later = 0;
    for (std::size_t i = 0; i < results.size(); i += 7) {
        const plan::FoodResult& food = results[i].foods.front();
        REQUIRE(food.done.has_value());
        REQUIRE(food.ready.has_value());
        CHECK(*food.ready >= *food.done);
        const units::History core = plan::replay(ensemble, *schedule, i, true).core_history(0);
        const auto left_at = [&](units::Duration end) {
            units::History part;
            for (const units::History::Point& p : core.points) {
                if (p.at < end) {
                    part.points.push_back(p);
                }
            }
            part.add(end, core.at(end));
            return safety::net_growth(beef, beef.q0_cautious, safety::cautious_kill(), part);
        };
        CHECK(left_at(*food.ready) <= 1e-6);
        CHECK(near_abs(left_at(*food.done), food.growth_left, 1e-6));
        if (*food.ready > *food.done + units::seconds(1)) {
            ++later;
            CHECK(left_at(*food.ready - units::seconds(1)) > 0.0);
        }
    }
    MESSAGE(later, " of ", results.size() / 7 + 1, " scenarios wait for what grew");
}

TEST_CASE("a slow roast is ready only when what grew is dead: later than the rows ask") {
    const trip::Trip trip = roast(80, 57, 30);
    const auto plan = planned(trip);
    REQUIRE(plan.ok());
    const plan::FoodPlan& food = plan->foods.front();
    CHECK(food.growth_left.high > 0.0);
    CHECK(food.waits_for_growth());
    CHECK(food.ready() > *food.done_late);
    CHECK(food.net_growth() == 0.0);
    CHECK(plan->fill.latest_food_in.since(plan->fill.food_in) <= food.eaten.since(food.ready()));
}

TEST_CASE("thin pieces have nothing to wait for") {
    const plan::FoodPlan& food = support::demo_plan("class-day").foods.front();
    CHECK_FALSE(food.waits_for_growth());
    CHECK(food.ready() == *food.done_late);
    CHECK(food.net_growth() == 0.0);
}
