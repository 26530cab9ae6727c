// SPDX-License-Identifier: MIT
// Whoever lights the fire at the last printed moment goes by the Hold card: its longest time must fit before serving.
#include "plan/result/hold_table.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("food in at the last moment is ready by the coolest column of its Hold table") {
    bool later_than_planned = false;
    for (const char* name : {"class-day", "trail-crew"}) {
        CAPTURE(name);
        const plan::Plan& plan = support::demo_plan(name);
        const units::LocalTime latest = plan.fill.latest_food_in;
        if (latest == plan.fill.food_in) {
            continue;
        }
        later_than_planned = true;
        for (plan::FoodPlan food : plan.foods) {
            plan::work_out_hold(plan, food);
            const std::optional<units::Duration>& hold = food.hold.cells[food.hold.own].front();
            REQUIRE(hold.has_value());
            CHECK((food.in > plan.fill.food_in || latest.after(*hold) <= food.leaves()));
        }
    }
    CHECK(later_than_planned);
}

TEST_CASE("a piece given in eighths of an inch has one hold time, on its row and on its tick") {
    plan::Plan plan = support::demo_plan("trail-crew");
    plan::FoodPlan food = plan.foods.front();
    trip::Food piece = *food.food;
    piece.thickness = units::millimetres(34.925);  // 1 3/8 in, printed as 35 mm too, where the ruler has a tick
    food.food = &piece;
    plan::work_out_hold(plan, food);
    REQUIRE(food.own_hold.time.has_value());
    REQUIRE(food.own_hold.ruler.ticks.size() > 6);
    CHECK(food.own_hold.ruler.ticks[6].hold == *food.own_hold.time);
    piece.thickness = units::millimetres(35.4);  // printed the same
    plan::work_out_hold(plan, food);
    CHECK(food.own_hold.ruler.ticks[6].hold == *food.own_hold.time);
}
