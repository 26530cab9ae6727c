// SPDX-License-Identifier: MIT
#include "plan/lived.hpp"

#include <algorithm>

#include "answer/hold.hpp"
#include "facts/facts.hpp"
#include "plan/parallel.hpp"
#include "safety/clocks.hpp"
#include "safety/kill.hpp"

namespace holdwater::plan {
namespace {

using units::Duration;

units::History until(const units::History& whole, Duration end) {
    units::History part;
    for (const units::History::Point& p : whole.points) {
        if (p.at <= end) {
            part.points.push_back(p);
        }
    }
    return part;
}

LivedFood food_of(const Run& run, const FoodSetup& food, const units::History& core, Duration serving) {
    const facts::Facts& facts = facts::facts();
    const facts::GrowthModel& growth = facts.growth(facts.find_food(food.food->kind)->growth);
    const answer::Safe safe = answer::judge_core(core, food.standard);
    const auto warm =
        core.first_at_or_above(food.food->target - facts.difference("done.below-target"), run.food_in());
    LivedFood lived;
    lived.ready = safe.safe && warm ? std::max(safe.safe->si(), warm->si()) : lived_never;
    lived.peak = core.highest().celsius();
    lived.kill = safety::kill_fraction(*food.standard.kill, until(core, serving)) /
                 safety::adaptation_factor(safe.come_up);
    lived.come_up = safe.come_up ? safe.come_up->si() : lived_never;
    const auto arrives = core.first_at_or_above(facts.temperature("come-up.to"), run.food_in());
    const units::History rise = until(core, arrives.value_or(serving));
    lived.growth_with_lag = safety::growth_with_lag(growth, rise, growth.q0_likely);
    lived.growth_without_lag = safety::growth_without_lag(growth, rise);
    return lived;
}

Lived live_one(const Ensemble& ensemble, const Schedule& schedule, std::size_t i,
               const std::vector<Duration>& moments) {
    const Setup& setup = ensemble.setup();
    const Duration serving = setup.trip->serve.since(setup.trip->from);
    const Run run = replay(ensemble, schedule, i, true);
    const units::History& bath = run.bath().bath_history();
    Lived lived;
    lived.failed = run.failed();
    lived.excess = run.excess().si();
    lived.food_in = run.food_in();
    lived.after_food = bath.at(run.food_in() + units::hours(1)).celsius();
    for (std::size_t k = 0; k < run.readings().size(); ++k) {
        lived.readings.push_back(run.readings()[k].celsius());
        lived.litres.push_back(run.poured()[run.fill_pours() + k].si());
    }
    for (const Duration t : moments) {
        lived.bath.push_back(bath.at(t).celsius());
        lived.core.push_back(t < run.food_in() ? setup.foods.front().food->start.celsius()
                                               : run.bath().core_history(0).at(t).celsius());
    }
    for (std::size_t f = 0; f < setup.foods.size(); ++f) {
        lived.foods.push_back(food_of(run, setup.foods[f], run.bath().core_history(f), serving));
    }
    return lived;
}

}  // namespace

std::vector<Duration> curve_moments(const Setup& setup) {
    const Duration end = setup.trip->serve.since(setup.trip->from);
    std::vector<Duration> moments;
    for (Duration t{0}; t <= end; t += units::minutes(15)) {
        moments.push_back(t);
    }
    return moments;
}

std::vector<Lived> live(const Ensemble& ensemble, const Schedule& schedule) {
    const std::vector<Duration> moments = curve_moments(ensemble.setup());
    std::vector<Lived> all(ensemble.size());
    for_each_index(ensemble.size(),
                   [&](std::size_t i) { all[i] = live_one(ensemble, schedule, i, moments); });
    return all;
}

bool holds_in(const Ensemble& ensemble, const std::vector<Lived>& lived) {
    std::vector<double> failed;
    std::vector<double> excess;
    for (const Lived& one : lived) {
        failed.push_back(one.failed ? 1.0 : 0.0);
        excess.push_back(one.excess);
    }
    return ensemble.share(failed).first <= ensemble.allowed() && quantile_high(excess, 1.0 - ensemble.allowed()) <= 0.0;
}

}  // namespace holdwater::plan
