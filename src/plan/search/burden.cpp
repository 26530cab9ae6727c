// SPDX-License-Identifier: MIT
#include "plan/search/burden.hpp"

#include "facts/facts.hpp"
#include "plan/provisions/fuel.hpp"
#include "plan/search/schedule.hpp"
#include "plan/search/sleep_window.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;

/// How much of an act lies in the sleep window.
Duration asleep_in(const SleepWindow& sleep, const Act& act) {
    Duration asleep{0};
    for (Duration from = act.from; from < act.to;) {
        const auto night = sleep.night_after(from);
        if (!night || night->from >= act.to) {
            break;
        }
        asleep += std::min(act.to, night->to) - std::max(from, night->from);
        from = night->to;
    }
    return asleep;
}

/// The fill of a recipe, likely.
Act filling(const Setup& setup, const Recipe& recipe) {
    const Duration poured = setup.round * (recipe.pours + setup.rounds_before);
    const units::Volume warming = setup.trip->fire.pot * (setup.trip->fire.usable * setup.rounds_before);
    return {Duration{0}, poured + facts::facts().duration("fill.settle"), setup.box->water - recipe.cold + warming};
}

}  // namespace

Duration Burden::weight() const {
    const facts::Facts& facts = facts::facts();
    const Duration carried = facts.duration("burden.litre") * units::in_litres(boiled) +
                             facts.duration(gas ? "burden.gas" : "burden.wood") * fuel.si();
    const Duration slept =
        facts.duration("burden.waking") * static_cast<double>(wakings) + woken * facts.value("burden.woken");
    const Duration doubt = facts.duration("burden.unsure") * static_cast<double>(unsure) +
                           facts.duration("burden.out-of-reach") * (out_of_reach ? 1.0 : 0.0);
    return fire + carried + slept + doubt + facts.duration("burden.held") * units::in_hours(held) +
           facts.duration("burden.past-best") * units::in_hours(past_best) + rushed;
}

Burden burden_of(const trip::Trip& trip, units::Temperature boiling, const std::vector<Act>& acts) {
    const SleepWindow sleep(trip);
    Burden burden;
    for (const Act& act : acts) {
        const Duration asleep = asleep_in(sleep, act);
        burden.wakings += asleep > Duration{0} ? 1 : 0;
        burden.woken += asleep;
        burden.fire += act.to - act.from - asleep;
        burden.boiled += act.boiled;
    }
    const double pot = facts::facts().value("fuel.pot-share");
    const units::Energy heat = heat_to_boil(burden.boiled, trip.fire.cold_water, boiling, pot);
    if (const auto fuel = fuel_for(trip.fire, {heat, heat, heat})) {
        burden.fuel = fuel->mass.likely;
        burden.gas = fuel->fuel != facts::Fuel::wood;
    }
    return burden;
}

Burden burden_of(const Setup& setup, const Schedule& schedule) {
    std::vector<Act> acts{filling(setup, schedule.recipe)};
    for (const ScheduledTopUp& top_up : schedule.top_ups) {
        acts.push_back({top_up.at - setup.round, top_up.at, top_up.pour.boiling});
    }
    return burden_of(*setup.trip, setup.levels.boiling, acts);
}

Burden burden_of(const Plan& plan) {
    const units::LocalTime from = plan.trip->from;
    std::vector<Act> acts{{Duration{0}, plan.fill.food_in.since(from), plan.fill.boiled + plan.fill.warming}};
    for (const TopUp& top_up : plan.top_ups) {
        acts.push_back({top_up.light_fire.since(from), top_up.at.since(from), top_up.boiling});
    }
    Burden burden = burden_of(*plan.trip, plan.levels.boiling, acts);
    const Duration slack = facts::facts().duration("burden.slack");
    for (const FoodPlan& food : plan.foods) {
        const Duration waits = food.leaves().since(food.ready());
        burden.held = std::max(burden.held, waits - slack);
        burden.unsure += food.ready_if > food.coolest.low ? 1 : 0;
        if (food.longest_for_texture) {
            burden.past_best =
                std::max(burden.past_best, food.held().value_or(Duration{0}) - *food.longest_for_texture);
        }
    }
    burden.out_of_reach = plan.mark_out_of_reach;
    burden.rushed = std::max(Duration{0}, slack - plan.fill.latest_fire.since(plan.fill.light_fire));
    return burden;
}

std::size_t wakes_of(const Plan& plan) {
    return static_cast<std::size_t>(
        std::count_if(plan.top_ups.begin(), plan.top_ups.end(), [](const TopUp& t) { return t.wakes; }));
}

}  // namespace holdwater::plan
