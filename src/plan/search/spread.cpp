// SPDX-License-Identifier: MIT
#include "plan/search/spread.hpp"

#include "facts/facts.hpp"
#include "plan/search/burden.hpp"
#include "plan/search/ladder.hpp"
#include "plan/search/left_alone.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/sleep_window.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

/// Share of scenarios in which the bath was below its level between top-ups: the floor as the food sees it, or the
/// action line.
double share_failing(const std::vector<Simulation>& runs) {
    const auto failing = std::count_if(runs.begin(), runs.end(), [](const Simulation& run) { return run.failed(); });
    return static_cast<double>(failing) / static_cast<double>(runs.size());
}

double share_short_of_mark(const std::vector<Simulation>& runs) {
    const auto low = std::count_if(runs.begin(), runs.end(), [](const Simulation& run) { return run.short_of_mark(); });
    return static_cast<double>(low) / static_cast<double>(runs.size());
}

/// What the cards say of a top-up: with a thermometer the ladder's litres at the likely reading, without one those that
/// the likely scenario asks for.
PlannedPour planned_pour(const Ensemble& ensemble, const std::vector<Simulation>& runs, const Recipe& recipe) {
    const Setup& setup = ensemble.setup();
    if (setup.box->thermometer) {
        std::vector<Temperature> readings;
        for (const Simulation& run : runs) {
            readings.push_back(run.readings().back());
        }
        return {std::min(by_ladder(recipe.ladder, quantile_high(readings, 0.5)), setup.batch)};
    }
    std::vector<units::Volume> wanted;
    for (const Simulation& run : runs) {
        wanted.push_back(run.wanted(recipe));
    }
    return {std::min(to_half_litre(quantile_high(wanted, 0.5), units::Toward::nearest), setup.batch)};
}

/// All of them live on to the k-th top-up, each as late as it is, and pour what is planned for it.
PlannedPour top_up_all(const Ensemble& ensemble, std::vector<Simulation>& runs, Duration at, std::size_t k,
                       const Recipe& recipe) {
    go_on_all(runs, [&](std::size_t i) {
        return Simulation::Leg{&runs[i], at + Duration{late_of(ensemble.scenario(i), k)}};
    });
    for (Simulation& run : runs) {
        run.arrive();
    }
    const PlannedPour planned = planned_pour(ensemble, runs, recipe);
    for (Simulation& run : runs) {
        run.pour_to_mark(recipe, planned);
    }
    return planned;
}

/// True if the pour that just was is none in the likely scenario.
bool poured_nothing(const Ensemble& ensemble, const std::vector<Simulation>& runs) {
    std::vector<units::Volume> boiling;
    for (const Simulation& run : runs) {
        boiling.push_back(run.poured().back());
    }
    return !is_act(ensemble.interval(boiling).likely);
}

/// Simulates a schedule, choosing each top-up as late as `share` of the scenarios allows; nothing once it is worse than
/// what it must beat.
Spread spread_top_ups(const Ensemble& ensemble, const Filled& start, const Recipe& recipe, double share,
                      const ToBeat& to_beat) {
    constexpr std::size_t most = 48;
    const Setup& setup = ensemble.setup();
    const Duration end = serving(setup);
    const SleepWindow sleep(*setup.trip);
    std::vector<Simulation> runs = start.runs;
    Schedule schedule;
    schedule.top_ups = start.done.top_ups;
    schedule.seen = start.done.seen;
    schedule.recipe = recipe;
    schedule.allowed = ensemble.allowed();
    schedule.weight = burden_of(setup, schedule).weight();
    const Duration watch = watch_from(setup, runs.front().food_in());
    Duration alone{std::numeric_limits<double>::infinity()};
    Duration last = runs.front().bath().now();
    for (const Simulation& run : runs) {
        last = std::max(last, run.bath().now());
    }
    const std::size_t first = start.done.top_ups.size();
    for (std::size_t k = first; k < most; ++k) {
        const std::vector<double> moments = k == first ? start.moments : deadlines(ensemble, runs, k);
        Duration deadline{quantile_low(moments, share)};
        if (k > first) {
            // The cards say how long the bath may be left after a top-up by night; the schedule keeps to it.
            const Duration now = alone_in_the_cold(ensemble, runs, moments);
            alone = last >= watch ? std::min(alone, now) : now;
            deadline = std::min(deadline, last + alone);
        }
        const bool soon = k == first && to_beat.wanted.soon;
        if (soon) {
            deadline = std::min(deadline, last + setup.round);
        }
        if (deadline >= end) {
            break;
        }
        ScheduledTopUp next = sleep.place(last, deadline, setup.round);
        const bool at_bedtime = !next.wakes && deadline - next.at > units::minutes(15);
        if (at_bedtime) {
            // A bath that still stands at the mark takes no water at bedtime: going there spares nobody the waking.
            std::vector<Simulation> tried = runs;
            top_up_all(ensemble, tried, std::max(next.at, last), k, recipe);
            next = poured_nothing(ensemble, tried) ? sleep.place_waking(deadline) : next;
        }
        if (soon) {
            next.at = last + setup.round;
        }
        if (next.at < last + setup.round) {
            schedule.boils_in_time = false;
        }
        const Duration at = std::max(next.at, last);
        schedule.top_ups.push_back({at, next.wakes, top_up_all(ensemble, runs, at, k, recipe)});
        schedule.empty += poured_nothing(ensemble, runs) ? 1 : 0;
        schedule.weight = burden_of(setup, schedule).weight();
        last = at;
        if (to_beat.worse(schedule)) {
            return {std::nullopt, false};
        }
        if (!schedule.boils_in_time) {
            break;
        }
        // It only rises from here on: where another schedule holds already, nobody asks by how much this one does not.
        if (to_beat.best != nullptr) {
            schedule.excess = excess_of(runs, ensemble.allowed());
            if (schedule.excess > 0) {
                return {schedule, false};
            }
        }
    }
    go_on_all(runs, [&](std::size_t i) { return Simulation::Leg{&runs[i], end}; });
    schedule.failing = share_failing(runs);
    schedule.short_of_mark = share_short_of_mark(runs);
    schedule.excess = excess_of(runs, ensemble.allowed());
    return {schedule, true};
}

}  // namespace

double excess_of(const std::vector<Simulation>& runs, double allowed) {
    std::vector<double> excess;
    for (const Simulation& run : runs) {
        excess.push_back(run.excess().si());
    }
    return quantile_high(excess, 1.0 - allowed);
}

std::size_t wakes(const Schedule& s) {
    return static_cast<std::size_t>(
        std::count_if(s.top_ups.begin(), s.top_ups.end(), [](const ScheduledTopUp& t) { return t.wakes; }));
}

bool better(const Schedule& a, const Schedule& b) {
    if (holds(a) != holds(b)) {
        return holds(a);
    }
    if (!holds(a)) {
        return std::max(a.failing, a.excess) < std::max(b.failing, b.excess);
    }
    if (reaches_mark(a) != reaches_mark(b)) {
        return reaches_mark(a);
    }
    if (a.empty != b.empty) {
        return a.empty < b.empty;
    }
    return std::pair{a.weight, a.failing} < std::pair{b.weight, b.failing};
}

ToBeat ToBeat::of(const std::optional<Schedule>& best, const Wanted& wanted) {
    return {best && holds(*best) && reaches_mark(*best) ? &*best : nullptr, wanted};
}

bool ToBeat::worse(const Schedule& so_far) const {
    const auto asks = [](const Schedule& s) { return std::pair{s.empty, s.weight}; };
    return (wanted.lighter_than && so_far.weight >= *wanted.lighter_than) || (wanted.unwoken && wakes(so_far) > 0) ||
           (best != nullptr && asks(so_far) > asks(*best));
}

Spread best_spread(const Ensemble& ensemble, const Filled& start, const Recipe& recipe, const ToBeat& to_beat) {
    Spread best;
    for (const double part : {0.8, 0.5, 0.25, 0.1, 0.0}) {
        auto [schedule, whole] = spread_top_ups(ensemble, start, recipe, ensemble.allowed() * part, to_beat);
        best.whole = best.whole && whole;
        if (!schedule) {
            break;  // stricter only means sooner, and more of them
        }
        const bool enough = holds(*schedule) || !schedule->boils_in_time || schedule->excess > 0;
        if (!best.schedule || better(*schedule, *best.schedule)) {
            best.schedule = std::move(schedule);
        }
        if (enough) {
            break;
        }
    }
    return best;
}

bool holds(const Schedule& s) {
    return s.boils_in_time && s.failing <= s.allowed && s.excess <= 0;
}

bool reaches_mark(const Schedule& s) {
    return s.short_of_mark <= s.allowed;
}

Recipe marked_at(const Ensemble& ensemble, Recipe recipe, Temperature mark) {
    recipe.top_up_mark = mark;
    recipe.ladder = ensemble.setup().box->thermometer ? ladder_for(ensemble, mark) : std::vector<LadderRung>{};
    return recipe;
}

Schedule with_pours(const Ensemble& ensemble, Schedule schedule) {
    std::vector<Simulation> runs = filled(ensemble, schedule.recipe);
    for (std::size_t k = 0; k < schedule.top_ups.size(); ++k) {
        schedule.top_ups[k].pour = top_up_all(ensemble, runs, schedule.top_ups[k].at, k, schedule.recipe);
    }
    return schedule;
}

}  // namespace holdwater::plan
