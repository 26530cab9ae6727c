// SPDX-License-Identifier: MIT
#include "plan/result/ready_condition.hpp"

#include "plan/result/hold_table.hpp"
#include "plan/result/judged_warming.hpp"
#include "units/whole_degrees.hpp"

#include <algorithm>
#include <optional>
#include <vector>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Toward;

/// A look at the thermometer, and what it is to be expected to show.
struct Look {
    units::LocalTime at;
    Interval<units::Temperature> reads;
};

/// Every look that the cards ask for while a food is in and not yet ready, at the minute of ready the last of them.
std::vector<Look> looks_before_ready(const Plan& plan, const FoodPlan& food) {
    std::vector<Look> looks;
    const auto add = [&](units::LocalTime at, const Interval<units::Temperature>& reads) {
        if (food.ready_late && at >= food.in && at <= *food.ready_late) {
            looks.push_back({at, reads});
        }
    };
    if (tells_settled(plan)) {
        add(settled_at(plan), plan.fill.after_food);
    }
    for (const TopUp& top_up : plan.top_ups) {
        add(top_up.at, top_up.reading);
    }
    return looks;
}

}  // namespace

void let_ready_hold(const Plan& plan, FoodPlan& food) {
    if (!plan.trip->boxes.front().thermometer || food.standard.finish || !food.ready_late) {
        return;
    }
    const Duration until = food.leaves().since(food.in);
    const auto hold = [&](units::Temperature bath) { return safe_hold(plan, food, food.food->thickness, bath); };
    auto time = hold(food.ready_if);
    // Where that is too late for the meal, or would warm too slowly as a log is judged, only hotter readings promise
    // it.
    const units::Temperature hottest = plan.fill.reading;
    while ((!time || *time > until || !surely_comes_up(plan, food, always(food.ready_if))) && food.ready_if < hottest) {
        food.ready_if = std::min(food.ready_if + units::kelvins(1), hottest);
        time = hold(food.ready_if);
    }
    // Never sooner than the table has it: where no reading is enough, it is not ready in time.
    food.ready_late = time ? std::optional(std::max(*food.ready_late, food.in.after(*time))) : std::nullopt;
}

void let_ready_hold_as_read(const Plan& plan, FoodPlan& food) {
    const Interval<units::Temperature> until_done = food.coolest;
    // The condition is printed rounded up, what is to be read rounded down.
    const auto printed = [&plan](units::Temperature reads) {
        return units::whole_degrees(reads, plan.trip->units, Toward::down);
    };
    std::optional<std::size_t> known;
    for (auto looks = looks_before_ready(plan, food); looks.size() != known; looks = looks_before_ready(plan, food)) {
        known = looks.size();
        food.coolest = until_done;
        for (const Look& look : looks) {
            food.coolest.low = std::min(food.coolest.low, printed(look.reads.low));
            food.coolest.likely = std::min(food.coolest.likely, printed(look.reads.likely));
        }
        food.ready_if = food.coolest.low;
        let_ready_hold(plan, food);  // the later it is ready by that, the more looks come before
    }
}

units::Temperature should_read(const Plan& plan, units::LocalTime at, units::Temperature low) {
    units::Temperature reads = units::whole_degrees(low, plan.trip->units, Toward::down);
    for (const FoodPlan& food : plan.foods) {
        const bool awaited = food.ready_late && at >= food.in && at <= *food.ready_late && !food.standard.finish;
        if (awaited && food.ready_if > food.coolest.low) {
            reads = std::max(reads, units::whole_degrees(food.ready_if, plan.trip->units, Toward::up));
        }
    }
    return reads;
}

units::LocalTime settled_at(const Plan& plan) {
    return plan.fill.food_in.after(units::hours(1));
}

bool tells_settled(const Plan& plan) {
    const units::LocalTime at = settled_at(plan);
    const bool first = plan.top_ups.empty() || at < plan.top_ups.front().light_fire;
    const bool watched = std::any_of(plan.foods.begin(), plan.foods.end(),
                                     [at](const FoodPlan& food) { return at >= food.in && at < food.leaves(); });
    return plan.trip->boxes.front().thermometer && first && watched && at < plan.trip->serve;
}

}  // namespace holdwater::plan
