// SPDX-License-Identifier: MIT
#include "plan/provisions/provisions.hpp"

#include "facts/facts.hpp"
#include "plan/provisions/texture.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/setup.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace holdwater::plan {
namespace {

/// The warmest air of the forecast, with its spread, from serving until leftovers that went in as late as they may are
/// cold.
units::Temperature air_for_leftovers(const Setup& setup) {
    const facts::Facts& facts = facts::facts();
    const units::LocalTime serve = setup.trip->serve;
    const units::Duration until = facts.duration("leftovers.begin") + facts.duration("cooling.all");
    units::Temperature warmest = setup.trip->weather.air_at(serve);
    for (units::Duration t{0}; t <= until; t += units::minutes(15)) {
        warmest = std::max(warmest, setup.trip->weather.air_at(serve.after(t)));
    }
    return warmest + units::kelvins(facts.spread("outside").high);
}

bool same(const facts::Composition& a, const facts::Composition& b) {
    return a.water == b.water && a.protein == b.protein && a.fat == b.fat && a.carbohydrate == b.carbohydrate &&
           a.fibre == b.fibre && a.ash == b.ash;
}

Leftovers leftovers_of(const Setup& setup, const Plan& plan) {
    const facts::Facts& facts = facts::facts();
    const facts::GeneralRules& rules = facts.rules_of(setup.trip->rules);
    Leftovers leftovers;
    leftovers.begin = facts.duration("leftovers.begin");
    leftovers.first = facts.duration("cooling.first");
    leftovers.all = facts.duration("cooling.all");
    leftovers.keep = facts.duration(rules.leftovers_keep);
    leftovers.reheat = facts.temperature(rules.leftovers_reheat);
    leftovers.reheat_hold = facts.duration(rules.leftovers_reheat + ".hold");
    leftovers.air = air_for_leftovers(setup);
    // Starts at the hottest core of the plan: a slice that was served cooler only cools sooner.
    units::Temperature start = setup.highest_core;
    for (const FoodPlan& food : plan.foods) {
        if (const facts::FoodKind* kind = facts.find_food(food.food->kind); kind != nullptr && !kind->keeps.empty()) {
            leftovers.keep = std::min(leftovers.keep, facts.duration(kind->keeps));
        }
        start = std::max({start, food.core_peak.high, food.food->target + food.food->tolerance});
        if (const auto& finish = food.standard.finish) {
            start = std::max(start, finish->core);
            if (finish->core > leftovers.reheat) {  // what was asked of it once is asked of it again
                leftovers.reheat = finish->core;
                leftovers.reheat_hold = finish->hold;
            }
        }
    }
    for (std::size_t i = 0; i < setup.foods.size(); ++i) {
        const facts::Composition& composition = setup.foods[i].piece.composition;
        const bool known =
            std::any_of(setup.foods.begin(), setup.foods.begin() + static_cast<std::ptrdiff_t>(i),
                        [&](const FoodSetup& other) { return same(other.piece.composition, composition); });
        if (known) {
            continue;
        }
        const auto slices = answer::thickest_slices(composition, start, leftovers.air);
        if (leftovers.slices.empty()) {
            leftovers.slices = slices;
            continue;
        }
        for (std::size_t k = 0; k < slices.size(); ++k) {
            // An empty optional is less than any thickness.
            if (slices[k].thickest < leftovers.slices[k].thickest) {
                leftovers.slices[k] = slices[k];
            }
        }
    }
    return leftovers;
}

void add(problem::Problems& all, const problem::Problems& more) {
    all.insert(all.end(), more.begin(), more.end());
}

/// `meal`: which one, empty for a trip of one meal.
void note_portions(const Portions& portions, int people, const std::string& meal, problem::Problems& notes) {
    const std::string missing = units::print(portions.missing, units::System::metric, {0.1, units::Toward::up});
    if (portions.verdict == Portions::Verdict::too_little) {
        notes.push_back(problem::note("portions-too-small",
                                      fmt::format("the food{} is less than {} ordinary portions", meal, people),
                                      fmt::format("{} more, raw and without bone, or more of the sides", missing)));
    } else if (portions.verdict == Portions::Verdict::scarce) {
        notes.push_back(problem::note("portions-scarce",
                                      fmt::format("the food{} is just enough if it does not cook down much", meal),
                                      fmt::format("{} more, raw and without bone, to be sure", missing)));
    }
}

problem::Problems notes_of(const Provisions& around, const trip::Trip& trip) {
    problem::Problems notes;
    const auto at = [&](units::LocalTime serve) {
        return around.earlier.empty() ? "" : fmt::format(" for the meal at {}", serve.clock_24());
    };
    for (const Meal& meal : around.earlier) {
        note_portions(meal.portions, trip.people, at(meal.serve), notes);
        add(notes, meal.sear.notes);
    }
    note_portions(around.portions, trip.people, at(trip.serve), notes);
    if (around.ice && !around.ice->fits) {
        problem::Problem full = problem::warning(
            "ice-does-not-fit",
            fmt::format("{:.1f} L of ice and {:.1f} L of food do not fit: this box holds {:.1f} L",
                        units::in_litres(around.ice->takes_up), units::in_litres(around.ice->food),
                        units::in_litres(around.ice->room.value_or(units::Volume{}))),
            "take part of the ice in a second box and top up on the way, or travel in the cool of the day");
        notes.push_back(std::move(full));
    }
    add(notes, around.sides.notes);
    add(notes, around.hot_water.notes);
    add(notes, around.sear.notes);
    return notes;
}

std::vector<Meal> earlier_meals(const Setup& setup, const Plan& plan) {
    std::vector<units::LocalTime> times;
    for (const FoodPlan& food : plan.foods) {
        if (food.eaten < setup.trip->serve) {
            times.push_back(food.eaten);
        }
    }
    std::sort(times.begin(), times.end());
    times.erase(std::unique(times.begin(), times.end()), times.end());
    std::vector<Meal> meals;
    for (const units::LocalTime time : times) {
        meals.push_back({time, portions_of(*setup.trip, time), sear_of(setup, plan, time)});
    }
    return meals;
}

}  // namespace

bool may_be_kept(const Leftovers& leftovers, const trip::Trip& trip) {
    return trip.boxes.front().thermometer &&
           std::any_of(leftovers.slices.begin(), leftovers.slices.end(), [](const answer::ThickestSlice& slice) {
               return slice.contact == facts::Contact::free && slice.thickest;
           });
}

Provisions provisions_of(const Setup& setup, const Plan& plan) {
    Provisions around;
    around.portions = portions_of(*setup.trip, setup.trip->serve);
    around.hot_water = hot_waters_of(plan);
    around.water = water_of(plan, around.hot_water.all);
    around.fuel = fuel_of(plan, around.water);
    around.ice = ice_of(setup, plan);
    around.frost = frost_of(setup, plan);
    around.sides = sides_of(plan);
    around.sear = sear_of(setup, plan, setup.trip->serve);
    around.earlier = earlier_meals(setup, plan);
    around.leftovers = leftovers_of(setup, plan);
    around.notes = notes_of(around, *setup.trip);
    add(around.notes, held_notes(plan));
    return around;
}

}  // namespace holdwater::plan
