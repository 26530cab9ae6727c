// SPDX-License-Identifier: MIT
#include "plan/result/attempt.hpp"

#include "facts/facts.hpp"
#include "plan/advice/limits.hpp"
#include "plan/advice/what_if.hpp"
#include "plan/result/events.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/last_chance.hpp"
#include "plan/result/late_pour.hpp"
#include "plan/result/look_again.hpp"
#include "plan/result/night.hpp"
#include "plan/result/ready_condition.hpp"
#include "plan/result/summary.hpp"
#include "plan/search/schedule.hpp"
#include "plan/search/sleep_window.hpp"
#include "units/print.hpp"
#include "units/whole_degrees.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;

Fill fill_of(const Ensemble& ensemble, const Schedule& schedule, const std::vector<ScenarioResult>& results) {
    const Setup& setup = ensemble.setup();
    const trip::Trip& trip = *setup.trip;
    Fill fill;
    fill.light_fire = trip.from;
    fill.cold = schedule.recipe.cold;
    fill.reading = schedule.recipe.reading;
    fill.warming = trip.fire.pot * (trip.fire.usable * setup.rounds_before);
    fill.warm_at = trip.from.after(setup.round * setup.rounds_before);
    std::vector<units::Temperature> later;
    std::vector<units::Volume> over;
    std::vector<units::Volume> boiled(results.size());
    for (std::size_t i = 0; i < results.size(); ++i) {
        later.push_back(results[i].after_food);
        over.push_back(results[i].over_rim);
        boiled[i] = std::accumulate(results[i].fill.begin(), results[i].fill.end(), units::Volume{0});
    }
    // What the pots hold is poured in full where every scenario but few asks for it; the rest goes by the reading.
    Simulation likely(setup, likely_scenario(), {}, false);
    likely.fill(schedule.recipe);
    const units::Volume pot = trip.fire.pot * trip.fire.usable;
    for (std::size_t k = 0; k < likely.fill_pours(); ++k) {
        std::vector<units::Volume> here;
        for (const ScenarioResult& one : results) {
            here.push_back(k < one.fill.size() ? one.fill[k] : units::Volume{0});
        }
        const Interval<units::Volume> poured = ensemble.interval(here);
        Pour pour;
        const double rounds = static_cast<double>(k + 1) + setup.rounds_before;
        pour.at = trip.from.after(setup.round * rounds);
        pour.boiling = likely.poured()[k];
        pour.most = std::max(pour.boiling, poured.high);
        pour.pots = std::max(1, static_cast<int>(std::ceil(pour.most / pot - 1e-9)));
        pour.whole = std::min(pour.pots, static_cast<int>(std::floor(poured.low / pot + 1e-9)));
        if (k + 1 == likely.fill_pours()) {
            pour.whole = std::min(pour.whole, pour.pots - 1);  // the last pot is poured by the reading
        }
        fill.pours.push_back(pour);
        fill.boiled += pour.boiling;
    }
    fill.boiled_most = std::max(fill.boiled, ensemble.interval(boiled).high);
    fill.after_food = ensemble.interval(later);
    std::vector<Duration> food_in;
    for (const ScenarioResult& one : results) {
        food_in.push_back(one.food_in);
    }
    fill.food_in = trip.from.after(ensemble.interval(food_in).likely);  // as each food's own
    if (ensemble.interval(over).high > units::Volume{0}) {
        fill.below_rim = below_rim(setup, setup.food_volume);
    }
    return fill;
}

std::vector<TopUp> top_ups_of(const Ensemble& ensemble, const Schedule& schedule,
                              const std::vector<ScenarioResult>& results) {
    const Setup& setup = ensemble.setup();
    std::vector<TopUp> top_ups;
    for (std::size_t k = 0; k < schedule.top_ups.size(); ++k) {
        std::vector<units::Temperature> readings;
        std::vector<units::Volume> boiling;
        std::vector<units::Volume> out;
        for (const ScenarioResult& one : results) {
            if (k < one.readings.size()) {
                out.push_back(one.out[k]);
                readings.push_back(one.readings[k]);
                boiling.push_back(one.boiling[k]);
            }
        }
        if (readings.empty()) {
            break;
        }
        TopUp top_up;
        top_up.at = setup.trip->from.after(schedule.top_ups[k].at);
        top_up.light_fire = setup.trip->from.after(schedule.top_ups[k].at - setup.round);
        top_up.reading = ensemble.interval(readings);
        top_up.boiling = schedule.top_ups[k].pour.boiling;
        top_up.boiling_most = std::max(top_up.boiling, ensemble.interval(boiling).high);
        top_up.out = ensemble.interval(out).likely;
        if (is_act(ensemble.interval(out).high)) {
            top_up.below_rim = below_rim(setup, top_up.boiling);
        }
        top_up.wakes = schedule.top_ups[k].wakes;
        top_ups.push_back(top_up);
    }
    return top_ups;
}

void add_curves(Plan& plan, const Ensemble& ensemble, const std::vector<ScenarioResult>& results) {
    plan.curve_at = curve_moments(ensemble.setup());
    for (std::size_t k = 0; k < plan.curve_at.size(); ++k) {
        std::vector<units::Temperature> bath;
        std::vector<units::Temperature> core;
        for (const ScenarioResult& one : results) {
            bath.push_back(one.bath[k]);
            core.push_back(one.core[k]);
        }
        plan.bath_curve.push_back(ensemble.interval(bath));
        plan.core_curve.push_back(ensemble.interval(core));
    }
}

void add_intervals(Plan& plan, const LeftBoxes& boxes) {
    // However calm it is, never longer than the Night card leaves it.
    const Duration by_night{units::round_to(plan.night.longest.si(), 900.0, units::Toward::down)};
    plan.interval_calm = std::min(boxes.after_top_up(&LeftBox::calm), std::max(by_night, units::minutes(15)));
    plan.interval_rough = std::min(boxes.after_top_up(&LeftBox::rough), plan.interval_calm);
}

void add_read_again(Plan& plan, const LeftBoxes& boxes) {
    const LookAgain again = look_again(boxes, {plan.levels, plan.round, plan.interval_rough, plan.trip->units});
    plan.levels.action_line = again.line;
    plan.again_at_mark = again.at_mark;
    plan.again_over_line = again.over_line;
}

/// Ready as cards and clocks tell it: so many times five minutes after the food goes in, as Hold counts them, or, where
/// the meal does not leave so much, to the minute.
units::LocalTime as_told(const FoodPlan& food, const trip::Trip& trip) {
    constexpr double five_minutes = 300.0;
    constexpr double rounding = 1e-4;
    const double takes = food.ready_late->since(food.in).si() - rounding;
    const units::LocalTime by_hold = food.in.after(Duration{units::round_to(takes, five_minutes, units::Toward::up)});
    if (by_hold <= food.leaves()) {
        return by_hold;
    }
    const double minutes = units::in_minutes(food.ready_late->since(trip.from));
    return trip.from.after(units::minutes(std::ceil(minutes - 1e-6)));
}

/// 1 where the promise failed, by scenario.
std::vector<double> failures(const std::vector<ScenarioResult>& results) {
    std::vector<double> failed;
    for (const ScenarioResult& one : results) {
        failed.push_back(one.failed ? 1.0 : 0.0);
    }
    return failed;
}

/// Nobody lights a fire asleep: a latest fire in the night becomes the one whose food is in by bedtime.
void keep_out_of_sleep(Plan& plan) {
    const units::LocalTime from = plan.trip->from;
    const Duration fill = plan.fill.food_in.since(plan.fill.light_fire);
    const auto night = SleepWindow(*plan.trip).night_after(plan.fill.food_in.since(from));
    if (!night) {
        return;
    }
    const units::LocalTime bedtime = from.after(night->from);
    if (plan.fill.latest_food_in > bedtime && plan.fill.latest_fire < from.after(night->to) &&
        bedtime >= plan.fill.food_in) {
        plan.fill.latest_food_in = bedtime;
        plan.fill.latest_fire = bedtime.after(-fill);
    }
}

}  // namespace

Attempt judged(const Ensemble& ensemble, const std::shared_ptr<const trip::Trip>& trip, Tried tried) {
    const Setup& setup = ensemble.setup();
    Attempt made{std::move(tried), {}, {}};
    Plan& plan = made.plan;
    plan.trip = trip;
    const auto [share, share_error] = ensemble.share(failures(made.tried.results));
    plan.promise = {1.0 - share, share_error, ensemble.size()};
    plan.levels = setup.levels;
    plan.levels.mark = made.tried.schedule.recipe.top_up_mark;
    plan.mark_out_of_reach = !reaches_mark_in(ensemble, made.tried.results);
    plan.round = setup.round;
    plan.cold_baths = cold_baths(setup);
    plan.loss = {setup.loss.low, setup.loss.likely, setup.loss.high};
    plan.fill = fill_of(ensemble, made.tried.schedule, made.tried.results);
    for (std::size_t i = 0; i < setup.foods.size(); ++i) {
        plan.foods.push_back(food_plan(ensemble, made.tried.results, i));
    }
    time_finishing(setup, plan);
    plan.top_ups = top_ups_of(ensemble, made.tried.schedule, made.tried.results);
    for (FoodPlan& food : plan.foods) {
        if (food.standard.kept_hot) {
            continue;
        }
        if (made.tried.schedule.seen) {
            let_ready_hold(plan, food);
        } else {
            let_ready_hold_as_read(plan, food);
        }
        if (food.ready_late) {
            food.ready_late = as_told(food, *trip);
        }
    }
    made.broken = limits_broken(ensemble, made.tried.schedule, plan, made.tried.results, false);
    return made;
}

problem::Result<Plan> completed(const Ensemble& ensemble, const Attempt& made, const Effort& effort) {
    const Setup& setup = ensemble.setup();
    const trip::Trip& trip = *setup.trip;
    const Schedule& schedule = made.tried.schedule;
    const std::vector<ScenarioResult>& results = made.tried.results;
    if (!made.broken.empty()) {
        return effort.diagnose ? limits_broken(ensemble, schedule, made.plan, results, true) : made.broken;
    }
    Plan plan = made.plan;
    // Whoever only compares plans need not know more than whether it has the slack of a good one.
    const bool to_the_slack = effort.schedule_only && !effort.last_chance;
    const units::Duration most = to_the_slack ? facts::facts().duration("burden.slack") : units::hours(48);
    plan.fill.latest_food_in = latest_food_in(ensemble, schedule, plan, most);
    plan.fill.latest_fire = plan.fill.light_fire.after(plan.fill.latest_food_in.since(plan.fill.food_in));
    keep_out_of_sleep(plan);
    if (effort.schedule_only) {
        return plan;
    }
    if (effort.for_cards) {
        for (FoodPlan& food : plan.foods) {
            if (!food.standard.kept_hot) {  // it is ready from the start, in any bath that keeps it hot
                work_out_hold(plan, food);
            }
        }
    }
    if (!setup.box->thermometer && !plan.top_ups.empty()) {
        plan.late_pour = late_pour(ensemble, schedule);
    }
    plan.ladder = schedule.recipe.ladder;
    const LeftBoxes boxes(ensemble, schedule);
    plan.night = night_of(ensemble, schedule, boxes);
    add_intervals(plan, boxes);
    add_read_again(plan, boxes);
    add_curves(plan, ensemble, results);
    plan.around.hot_water = hot_waters_of(plan);
    plan.around.sear = sear_of(setup, plan, trip.serve);
    plan.events = events_of(plan);
    if (effort.what_ifs) {
        plan.what_ifs = answers_to_what_ifs(ensemble, schedule, plan);
    }
    plan.waits_until = trip.serve.after(may_wait(boxes));
    plan.waits_if = std::max(boxes.reading_at_serving(),
                             first_over(plan.levels.action_line, trip.units));  // at the line a top-up is due
    if (!plan.top_ups.empty()) {
        // Never past what the cards say of a top-up.
        const Duration longest{units::round_to(plan.night.longest.si(), 900.0, units::Toward::down)};
        const units::LocalTime alone = plan.top_ups.back().at.after(longest);
        plan.waits_until = std::max(trip.serve, std::min(plan.waits_until, alone));
    }
    if (!setup.box->thermometer && plan.top_ups.empty()) {
        // With no reading and no pour it is left no longer than the meal may wait.
        plan.night.longest = std::min(plan.night.longest, plan.waits_until.since(plan.fill.food_in));
    }
    plan.notes = remarks(setup, plan);
    plan.around = provisions_of(setup, plan);
    plan.notes.insert(plan.notes.end(), plan.around.notes.begin(), plan.around.notes.end());
    return plan;
}

}  // namespace holdwater::plan
