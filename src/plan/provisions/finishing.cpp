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

const trip::Fire& whole_fire(const trip::Trip& trip) {
    return trip.whole_fire ? *trip.whole_fire : trip.fire;
}

/// Side dishes have their pots on the fire for the trip's serving.
int pots_left(const trip::Trip& trip, units::LocalTime meal) {
    const int sides = meal == trip.serve ? static_cast<int>(trip.sides.size()) : 0;
    return std::max(1, whole_fire(trip).pots - sides);
}

/// A cook goes by whole minutes.
Duration whole_minutes(Duration d) {
    constexpr double minute = 60.0;
    return Duration{std::ceil(d.si() / minute - 1e-9) * minute};
}

/// What goes over the fire for one meal.
struct ForTheFire {
    units::Volume volume;
    Duration longest{0};
};

/// From the core with which it leaves the bath to the full one, in water that boils as it does there.
std::optional<answer::FinishTime> time_over_fire(const Setup& setup, const answer::Piece& piece,
                                                 const safety::Standard& standard) {
    return answer::finish_time(piece, *standard.finish, answer::core_out_of_bath(piece, standard),
                               setup.levels.boiling);
}

/// What another box has on the same fire for this meal, by its cut and kind.
ForTheFire from_another_box(const Setup& setup, units::LocalTime meal) {
    ForTheFire other;
    for (const trip::Food& food : setup.trip->elsewhere) {
        if (trip::eaten(food, *setup.trip) != meal) {
            continue;
        }
        const auto standard = answer::standard_of(food, *setup.trip, *setup.box);
        if (!standard || !standard->finish) {
            continue;
        }
        const answer::Piece piece = answer::piece_of(food);
        const auto time = time_over_fire(setup, piece, *standard);
        other.volume += answer::lying(piece).volume;
        other.longest = std::max(other.longest, time ? time->longest() : Duration{0});
    }
    return other;
}

/// Potfuls of a meal: at once, one after the other, and of another box in turn with them.
struct Lots {
    int pots = 1;
    int lots = 1;
    units::Volume content;  // of one pot
};

Lots lots_of(const trip::Trip& trip, units::LocalTime meal, units::Volume own, units::Volume other) {
    const auto potfuls = [](units::Volume food, const trip::Fire& fire) {
        return static_cast<int>(std::ceil(food / food_in_a_pot(fire) - 1e-9));
    };
    const trip::Fire& whole = whole_fire(trip);
    const int left = pots_left(trip, meal);
    if (other > units::Volume{0} && left == 1) {
        // One pot for both: the boxes take turns, each with the whole of it.
        return {1, std::max(1, potfuls(own, whole)) + potfuls(other, whole), whole.pot * whole.usable};
    }
    // No pot is promised twice: each box has its share of those that are left, and leaves one for the other.
    const int share = other > units::Volume{0} ? std::clamp(left * trip.fire.pots / whole.pots, 1, left - 1)
                                               : std::min(left, trip.fire.pots);
    const int needed = std::max(1, potfuls(own, trip.fire));
    const int pots = std::min(needed, share);
    return {pots, (needed + pots - 1) / pots, trip.fire.pot * trip.fire.usable};
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
    return time_over_fire(setup, food.piece, food.standard);
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
        ForTheFire own;
        for (std::size_t k = 0; k < plan.foods.size(); ++k) {
            if (times[k] && plan.foods[k].eaten == food.eaten) {
                own.volume += setup.foods[k].volume;
                own.longest = std::max(own.longest, times[k]->longest());
            }
        }
        const ForTheFire other = from_another_box(setup, food.eaten);
        const Lots lots = lots_of(*setup.trip, food.eaten, own.volume, other.volume);
        const bool in_turns = other.volume > units::Volume{0} && pots_left(*setup.trip, food.eaten) == 1;
        const Duration longest = in_turns ? std::max(own.longest, other.longest) : own.longest;
        Finishing finishing;
        finishing.one = *times[i];
        finishing.pots = lots.pots;
        finishing.lots = lots.lots;
        finishing.water = lots.content * ((1.0 - facts::facts().value("finish.pot-share")) * finishing.pots);
        finishing.takes = whole_minutes(longest + facts::facts().duration("finish.handling")) * finishing.lots;
        finishing.out = food.due.after(-finishing.takes);
        finishing.light_fire = finishing.out.after(-setup.round);
        food.finishing = finishing;
    }
}

}  // namespace holdwater::plan
