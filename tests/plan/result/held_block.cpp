// SPDX-License-Identifier: MIT
// A block is held as the block that it is: in the Hold table, for the plan, and as `hold` has it.
#include "answer/hold/hold_time.hpp"
#include "plan/result/hold_table.hpp"
#include "support/efforts.hpp"
#include "support/few_ways.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("a block is held as the block that it is, not as an endless slab of its thickness") {
    const facts::FactsInForce few_ways(support::facts_of_few_ways());
    const plan::Plan& plan = support::demo_plan("template");
    plan::FoodPlan food = plan.foods.front();
    REQUIRE(food.food->shape == facts::Shape::block);
    food.ready_late.reset();  // by itself, whatever the plan allows for besides
    plan::work_out_hold(plan, food);
    const units::TemperatureDifference error = plan.trip->boxes.front().thermometer.value();
    const auto as_it_is = answer::HoldTimes::of(food.piece, food.standard, error);
    answer::Piece endless = food.piece;
    endless.body.shape = facts::Shape::slab;
    const auto as_slab = answer::HoldTimes::of(endless, food.standard, error);
    REQUIRE(as_it_is.ok());
    REQUIRE(as_slab.ok());
    int columns = 0;
    for (std::size_t c = 0; c < food.hold.baths.size(); ++c) {
        const auto& cell = food.hold.cells[food.hold.own][c];
        const auto block = as_it_is->at(food.hold.baths[c]).allowed;
        const auto slab = as_slab->at(food.hold.baths[c]).cautious;
        if (!cell || !block || !slab) {
            continue;
        }
        ++columns;
        CHECK(support::near_abs(units::in_minutes(*cell), units::in_minutes(*block), 1.0));
        CHECK(*cell < *slab - units::minutes(20));
        // By the same time the plan calls it ready, at the reading of its condition.
        CHECK(plan::safe_hold(plan, food, food.food->thickness, food.hold.baths[c]) == block);
    }
    CHECK(columns >= 2);
}
