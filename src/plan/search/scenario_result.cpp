// SPDX-License-Identifier: MIT
#include "plan/search/scenario_result.hpp"

#include "answer/hold/hold.hpp"
#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"
#include "safety/clocks.hpp"
#include "safety/growth.hpp"
#include "safety/kill.hpp"
#include "safety/net_growth.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;

units::History until(const units::History& whole, Duration end) {
    units::History part;
    part.points.reserve(whole.points.size());
    for (const units::History::Point& p : whole.points) {
        if (p.at <= end) {
            part.points.push_back(p);
        }
    }
    return part;
}

/// A history at rising moments; before its first point, that point's value; without any, `otherwise`.
std::vector<units::Temperature> sampled(const units::History& history, const std::vector<Duration>& moments,
                                        units::Temperature otherwise) {
    std::vector<units::Temperature> values;
    if (history.empty()) {
        values.assign(moments.size(), otherwise);
        return values;
    }
    values.reserve(moments.size());
    std::size_t next = 0;  // first point after the moment
    for (const Duration moment : moments) {
        while (next < history.points.size() && history.points[next].at <= moment) {
            ++next;
        }
        const units::History::Point& left = history.points[next == 0 ? 0 : next - 1];
        units::Temperature value = left.value;
        if (next > 0 && next < history.points.size()) {
            const units::History::Point& right = history.points[next];
            value = value + (right.value - left.value) * ((moment - left.at) / (right.at - left.at));
        }
        values.push_back(value);
    }
    return values;
}

/// The lowest value from one moment to another.
units::Temperature lowest_between(const units::History& history, Duration from, Duration to) {
    units::Temperature lowest = std::min(history.at(from), history.at(to));
    for (const units::History::Point& p : history.points) {
        if (p.at >= from && p.at <= to) {
            lowest = std::min(lowest, p.value);
        }
    }
    return lowest;
}

/// What every scenario is judged by, looked up once.
struct Judges {
    std::vector<Duration> moments;  // of the curve
    units::TemperatureDifference below_target;
    units::Temperature risen;
    std::vector<const facts::GrowthModel*> growth;  // of each food

    explicit Judges(const Setup& setup) : moments(curve_moments(setup)) {
        const facts::Facts& facts = facts::facts();
        below_target = facts.difference("done.below-target");
        risen = facts.temperature("come-up.to");
        for (const FoodSetup& food : setup.foods) {
            growth.push_back(&facts.growth(facts.find_food(food.food->kind)->growth));
        }
    }
};

FoodResult food_of(const FoodSetup& food, const units::History& core, const Judges& by,
                   const facts::GrowthModel& growth) {
    const answer::CoreMilestones safe = answer::judge_core(core, food.standard);
    FoodResult result;
    if (core.empty()) {
        return result;  // it was to come out before the bath was ready for it
    }
    // What was cooked before has no target of its own: its floor is in its standard.
    const auto warm = food.standard.kept_hot ? std::optional(core.points.front().at)
                                             : core.first_at_or_above(food.food->target - by.below_target);
    if (safe.safe && warm) {
        result.done = std::max(*safe.safe, *warm);
    }
    const safety::LeftOver left = safety::ready_after(food.standard, core, result.done.value_or(core.points.back().at));
    result.growth_left = left.log10;
    if (result.done) {
        result.ready = left.undone;
    }
    result.peak = core.highest();
    result.kill = safety::kill_fraction(*food.standard.kill, core) / safety::adaptation_factor(safe.come_up);
    result.come_up = safe.come_up;
    const auto arrives = core.first_at_or_above(by.risen);
    const units::History rise = arrives ? until(core, *arrives) : core;
    result.growth_without_lag = safety::growth_without_lag(growth, rise);
    result.growth_with_lag = safety::lagged_growth(result.growth_without_lag, growth.q0_likely);
    return result;
}

ScenarioResult result_of(const Setup& setup, const Simulation& run, const Judges& by) {
    const std::vector<Duration>& moments = by.moments;
    const units::History& bath = run.bath().bath_history();
    ScenarioResult result;
    result.failed = run.failed();
    result.short_of_mark = run.short_of_mark();
    result.excess = run.excess();
    result.food_in = run.food_in();
    result.over_rim = run.over_rim();
    result.spilled = run.spilled();
    result.fill.assign(run.poured().begin(), run.poured().begin() + static_cast<std::ptrdiff_t>(run.fill_pours()));
    result.at_end = run.bath().temperature();
    const units::TemperatureDifference shows_more = run.shown() - run.bath().temperature();
    result.after_food = bath.at(run.food_in() + units::hours(1)) + shows_more;
    for (std::size_t k = 0; k < run.readings().size(); ++k) {
        result.readings.push_back(run.readings()[k]);
        result.boiling.push_back(run.poured()[run.fill_pours() + k]);
        result.out.push_back(run.taken_out()[run.fill_pours() + k]);
    }
    result.bath = sampled(bath, moments, run.bath().temperature());
    result.core = sampled(run.core_history(0), moments, setup.foods.front().food->start);
    for (std::size_t f = 0; f < setup.foods.size(); ++f) {
        FoodResult food = food_of(setup.foods[f], run.core_history(f), by, *by.growth[f]);
        const Duration in = std::max(run.food_in(), setup.foods[f].in.value_or(run.food_in()));
        food.coolest = lowest_between(bath, in, std::max(in, food.ready.value_or(setup.foods[f].out))) + shows_more;
        result.foods.push_back(food);
    }
    return result;
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

std::vector<ScenarioResult> simulate(const Ensemble& ensemble, const Schedule& schedule) {
    const Judges by(ensemble.setup());
    std::vector<ScenarioResult> all(ensemble.size());
    each_side_by_side(ensemble.size(), [&](const std::vector<std::size_t>& group) {
        const std::vector<Simulation> runs = replay_all(ensemble, schedule, group, true);
        for (std::size_t k = 0; k < group.size(); ++k) {
            all[group[k]] = result_of(ensemble.setup(), runs[k], by);
        }
    });
    return all;
}

bool reaches_mark_in(const Ensemble& ensemble, const std::vector<ScenarioResult>& results) {
    std::vector<double> low;
    for (const ScenarioResult& one : results) {
        low.push_back(one.short_of_mark ? 1.0 : 0.0);
    }
    return ensemble.share(low).first <= ensemble.allowed();
}

bool holds_in(const Ensemble& ensemble, const std::vector<ScenarioResult>& results) {
    std::vector<double> failed;
    std::vector<units::TemperatureDifference> excess;
    for (const ScenarioResult& one : results) {
        failed.push_back(one.failed ? 1.0 : 0.0);
        excess.push_back(one.excess);
    }
    return ensemble.share(failed).first <= ensemble.allowed() &&
           quantile_high(excess, 1.0 - ensemble.allowed()) <= units::TemperatureDifference{0};
}

}  // namespace holdwater::plan
