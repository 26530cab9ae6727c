// SPDX-License-Identifier: MIT
// What grew in a core while it warmed must be dead when it is called ready.
#include "plan/advice/limits.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/scenario_result.hpp"
#include "plan/search/setup.hpp"
#include "safety/clocks.hpp"
#include "safety/net_growth.hpp"
#include "support/borrowed.hpp"
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
    const trip::Trip trip = roast(80, 57, 30);
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
    CHECK(later > 0);
}

TEST_CASE("a slow roast is ready only when what grew is dead: later than the rows ask") {
    trip::Trip trip = roast(76, 57, 30);
    const problem::Problems late = planned(roast(88, 57, 30)).problems();  // its log would not show it done
    REQUIRE_FALSE(late.empty());
    CHECK((late.front().code == problem::Code("not-ready-in-time")));
    trip.boxes.front().thermometer = units::kelvins(0.3);
    const auto plan = planned(trip);
    REQUIRE(plan.ok());
    const plan::FoodPlan& food = plan->foods.front();
    CHECK(food.growth_left.high > 0.0);
    CHECK(food.waits_for_growth());
    CHECK(food.ready() > *food.done_late);
    CHECK(food.net_growth() == 0.0);
    CHECK(plan->fill.latest_food_in.since(plan->fill.food_in) <= food.eaten.since(food.ready()));
}

namespace {

/// Every scenario the same: in at two hours, done at `done`, never without what grew in it.
std::vector<plan::ScenarioResult> never_undone(std::size_t scenarios, double done, double come_up) {
    plan::ScenarioResult one;
    one.food_in = units::hours(2);
    plan::FoodResult food;
    food.done = units::hours(done);
    food.come_up = units::hours(come_up);
    food.growth_left = 1.5;
    food.kill = 2.0;
    food.peak = units::celsius(58);
    one.foods.push_back(food);
    return {scenarios, one};
}

/// The codes of what such a food breaks, and whether it goes over the fire.
struct Judged {
    plan::FoodPlan food;
    problem::Problems broken;
};
Judged judged(const trip::Trip& trip, double done, double come_up) {
    const auto setup = plan::set_up(trip);
    REQUIRE(setup.ok());
    const plan::Ensemble ensemble(*setup, few);
    const auto results = never_undone(ensemble.size(), done, come_up);
    plan::Plan plan;
    plan.trip = support::borrowed(trip);
    plan.levels.boiling = setup->levels.boiling;
    plan.fill.food_in = trip.from.after(units::hours(2));
    plan.round = setup->round;
    plan.promise.share = 1.0;
    plan.foods.push_back(plan::food_plan(ensemble, results, 0));
    plan::time_finishing(*setup, plan);
    return {plan.foods.front(), plan::limits_broken(ensemble, plan::Schedule{}, plan, results, false)};
}

}  // namespace

TEST_CASE("what grew and is not dead by the meal goes over the fire, where the piece can") {
    trip::Trip trip = roast(45, 57, 8);
    const Judged fire = judged(trip, 4.0, 2.0);
    CHECK(fire.food.finished_for_growth);
    REQUIRE(fire.food.standard.finish.has_value());
    CHECK(fire.food.standard.finish->core == facts::facts().temperature("finish.full"));
    CHECK(fire.food.ready() == trip.from.after(units::hours(4)));
    CHECK(fire.food.net_growth() == 1.5);
    CHECK_FALSE(fire.food.waits_for_growth());
    CHECK(fire.food.leaves() < fire.food.eaten);
    CHECK(fire.broken.empty());
}

TEST_CASE("where it cannot, the trip is refused with a code of its own") {
    trip::Trip trip = roast(45, 58, 8);
    const auto refused = [](const Judged& one) {
        CHECK_FALSE(one.food.finished_for_growth);
        CHECK(support::has_code(one.broken, "growth-not-undone"));
        CHECK_FALSE(support::has_code(one.broken, "not-ready-in-time"));
    };
    refused(judged(trip, 4.0, 3.5));   // too slow a piece for the fire
    refused(judged(trip, 7.75, 2.0));  // no time left for the fire
    trip.boxes.front().thermometer.reset();
    refused(judged(trip, 4.0, 2.0));  // nobody can tell when it is hot all through
    // Not done at all is another fault.
    trip = roast(45, 57, 8);
    CHECK(support::has_code(judged(trip, 9.0, 2.0).broken, "not-ready-in-time"));
}

TEST_CASE("thin pieces have nothing to wait for") {
    const plan::Plan& plan = support::demo_plan("class-day");
    const plan::FoodPlan& food = plan.foods.front();
    CHECK_FALSE(food.waits_for_growth());
    // Only its own condition can make it later: the time in a bath that always reads what that names.
    const auto hold = plan::safe_hold(plan, food, food.food->thickness, food.ready_if);
    REQUIRE(hold.has_value());
    const units::LocalTime exact = std::max(*food.done_late, food.in.after(*hold));
    CHECK(food.ready() >= exact);
    CHECK(food.ready() < exact.after(units::minutes(1)));  // up to the minute, as clocks tell it
    CHECK(food.net_growth() == 0.0);
}
