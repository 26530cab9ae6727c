// SPDX-License-Identifier: MIT
#include "plan/provisions/hot_water.hpp"

#include "plan/provisions/boilings.hpp"
#include "plan/result/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::plan {
namespace {

HotWaterStart start_of(const trip::HotWater& water, const Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    const trip::Fire& fire = trip.whole_fire.value_or(trip.fire);
    HotWaterStart start;
    start.name = water.name;
    start.volume = trip::all_of(water, trip);
    const int potfuls = std::max(1, static_cast<int>(std::ceil(start.volume / (fire.pot * fire.usable) - 1e-9)));
    start.pots = std::min(potfuls, fire.pots);
    start.rounds = (potfuls + start.pots - 1) / start.pots;
    start.at = water.at.value_or(trip::first_sitting(trip));
    start.light_fire = start.at.after(-(plan.round * start.rounds));
    return start;
}

/// Pots on the fire with this water at once, at the most: those of the bath, of the side dishes and of what is
/// finished.
int pots_beside(const HotWaterStart& water, const Plan& plan) {
    const trip::Trip& trip = *plan.trip;
    const auto meets = [&](units::LocalTime from, units::LocalTime until) {
        return from < water.at && water.light_fire < until;
    };
    int bath = 0;
    for (const Boiling& boiling : boilings_of(plan)) {
        bath = std::max(bath, meets(boiling.from, boiling.until) ? boiling.pots : 0);
    }
    int others = 0;
    for (const trip::Side& side : trip.sides) {
        others += meets(trip::first_sitting(trip).after(-side.takes), trip::first_sitting(trip)) ? 1 : 0;
    }
    int finishing = 0;
    for (const FoodPlan& food : plan.foods) {
        if (food.finishing && meets(food.finishing->light_fire, food.eaten)) {
            finishing = std::max(finishing, food.finishing->pots);
        }
    }
    return bath + others + finishing;
}

void add_clash(const HotWaterStart& water, const Plan& plan, problem::Place place, problem::Problems& notes) {
    const trip::Trip& trip = *plan.trip;
    const int there = trip.whole_fire.value_or(trip.fire).pots;
    const auto warn = [&](std::string message, std::string hint) {
        problem::Problem clash = problem::warning("hot-water-clash", std::move(message), std::move(hint));
        clash.place = place;
        notes.push_back(std::move(clash));
    };
    if (water.light_fire < trip.from) {
        warn(fmt::format("{}: its pots would have to be on at {}, before there is a fire", water.name,
                         water.light_fire.clock_24()),
             "less of it, later, or more pots");
        return;
    }
    const int beside = pots_beside(water, plan);
    if (beside + water.pots > there) {
        warn(fmt::format("{}: from {} to {} it wants {} of {} pots while {} are on for bath and meal", water.name,
                         water.light_fire.clock_24(), water.at.clock_24(), water.pots, there, beside),
             "another time, or one pot more; the bath goes first");
    }
}

}  // namespace

HotWaters hot_waters_of(const Plan& plan) {
    HotWaters waters;
    for (const trip::HotWater& one : plan.trip->hot_water) {
        waters.list.push_back(start_of(one, plan));
        waters.all += waters.list.back().volume;
        add_clash(waters.list.back(), plan, one.place, waters.notes);
    }
    std::stable_sort(waters.list.begin(), waters.list.end(),
                     [](const HotWaterStart& a, const HotWaterStart& b) { return a.light_fire < b.light_fire; });
    return waters;
}

}  // namespace holdwater::plan
