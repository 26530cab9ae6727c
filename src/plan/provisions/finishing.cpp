// SPDX-License-Identifier: MIT
#include "plan/provisions/finishing.hpp"

#include "facts/facts.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace holdwater::plan {
namespace {

using units::Duration;

/// Of one pot's content: food, so that its water soon boils again.
units::Volume food_in_a_pot(const trip::Fire& fire) {
    return fire.pot * (fire.usable * facts::facts().value("finish.pot-share"));
}

/// Side dishes have their pots on the fire for the trip's serving.
int pots_left(const trip::Trip& trip, units::LocalTime meal) {
    const int sides = meal == trip.serve ? static_cast<int>(trip.sides.size()) : 0;
    return std::max(1, trip.fire.pots - sides);
}

/// A cook goes by whole minutes.
Duration whole_minutes(Duration d) {
    constexpr double minute = 60.0;
    return Duration{std::ceil(d.si() / minute - 1e-9) * minute};
}

}  // namespace

units::Volume water_to_finish(const Plan& plan) {
    units::Volume water{0};
    std::vector<units::LocalTime> meals;
    for (const FoodPlan& food : plan.foods) {
        const bool counted = std::find(meals.begin(), meals.end(), food.eaten) != meals.end();
        if (food.finishing && !counted) {
            water += food.finishing->water;
            meals.push_back(food.eaten);
        }
    }
    return water;
}

std::optional<answer::FinishTime> finish_time_of(const Setup& setup, const FoodPlan& food) {
    return answer::finish_time(food.piece, *food.standard.finish, answer::core_out_of_bath(food.piece, food.standard),
                               setup.boiling);
}

void time_finishing(const Setup& setup, Plan& plan) {
    std::vector<std::optional<answer::FinishTime>> times;
    for (const FoodPlan& food : plan.foods) {
        times.push_back(food.standard.finish ? finish_time_of(setup, food) : std::nullopt);
    }
    for (std::size_t i = 0; i < plan.foods.size(); ++i) {
        FoodPlan& food = plan.foods[i];
        if (!times[i]) {
            continue;
        }
        units::Volume volume{0};
        Duration longest{0};
        for (std::size_t k = 0; k < plan.foods.size(); ++k) {
            if (times[k] && plan.foods[k].eaten == food.eaten) {
                volume += setup.foods[k].volume;
                longest = std::max(longest, times[k]->longest());
            }
        }
        Finishing finishing;
        finishing.one = *times[i];
        const trip::Fire& fire = setup.trip->fire;
        const int potfuls = std::max(1, static_cast<int>(std::ceil(volume / food_in_a_pot(fire) - 1e-9)));
        finishing.pots = std::min(potfuls, pots_left(*setup.trip, food.eaten));
        finishing.lots = (potfuls + finishing.pots - 1) / finishing.pots;
        finishing.water = (fire.pot * fire.usable - food_in_a_pot(fire)) * finishing.pots;
        finishing.takes = whole_minutes(longest + facts::facts().duration("finish.handling")) * finishing.lots;
        finishing.out = food.eaten.after(-finishing.takes);
        finishing.light_fire = finishing.out.after(-setup.round);
        food.finishing = finishing;
    }
}

}  // namespace holdwater::plan
