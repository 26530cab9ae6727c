// SPDX-License-Identifier: MIT
#include "plan/search/schedule_search.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/work.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

/// Excess of the core from the fill alone, within the time in which any piece that may be cooked here peaks.
double excess_after_fill(const Ensemble& ensemble, const Recipe& recipe) {
    std::vector<Simulation> runs = filled(ensemble, recipe);
    const Duration until = serving(ensemble.setup());
    go_on_all(runs, [&](std::size_t i) {
        return Simulation::Leg{&runs[i], std::max(until, runs[i].food_in()), runs[i].level() - units::kelvins(1)};
    });
    return excess_of(runs, ensemble.allowed());
}

/// The hottest fill whose heat alone keeps the cores within tolerance, in whole degrees, as the card prints it.
std::optional<Recipe> hottest_within_tolerance(const Ensemble& ensemble) {
    const Setup& setup = ensemble.setup();
    double low = std::ceil(setup.levels.action_line.celsius());
    const facts::Facts& facts = facts::facts();
    double high = std::floor(
        std::min({facts.value("fill.highest"), facts.value("box.bag-softens"), setup.levels.boiling.celsius() - 5.0}));
    auto best = recipe_for(setup, units::celsius(low));
    if (!best || excess_after_fill(ensemble, *best) > 0) {
        return best;
    }
    if (auto top = recipe_for(setup, units::celsius(high)); top && excess_after_fill(ensemble, *top) <= 0) {
        return top;
    }
    while (high - low > 1.0) {
        const double middle = std::floor((low + high) / 2.0);
        const auto recipe = recipe_for(setup, units::celsius(middle));
        if (recipe && excess_after_fill(ensemble, *recipe) <= 0) {
            low = middle;
            best = recipe;
        } else {
            high = middle;
        }
    }
    return best;
}

/// The same, or a little cooler where the pots that fill the box reach the hottest only by luck: who has to boil once
/// more has another plan.
std::optional<Recipe> hottest_fill(const Ensemble& ensemble) {
    const auto best = hottest_within_tolerance(ensemble);
    if (!best || best->sure) {
        return best;
    }
    const Setup& setup = ensemble.setup();
    const double hottest = best->reading.celsius();
    const double low =
        std::max(hottest - facts::facts().value("fill.cooler"), std::ceil(setup.levels.action_line.celsius()));
    for (double reading = hottest - 1.0; reading >= low; reading -= 1.0) {
        if (auto cooler = recipe_for(setup, units::celsius(reading)); cooler && cooler->sure) {
            return cooler;
        }
    }
    return best;
}

constexpr double cooler = 3.0;  // K by which other fills than the hottest are tried: no figure of any science

/// Keeps the better of two in `best`.
void take(std::optional<Schedule>& best, std::optional<Schedule> schedule) {
    if (schedule && (!best || better(*schedule, *best))) {
        best = std::move(schedule);
    }
}

/// Marks near the action line come too often.
double lowest_mark(const Setup& setup, const Wanted& wanted) {
    return std::max(std::ceil(setup.levels.action_line.celsius()) + 2.0,
                    wanted.lowest_mark ? wanted.lowest_mark->celsius() : 0.0);
}

}  // namespace

const std::optional<Recipe>& ScheduleSearch::hottest() {
    if (!hottest_) {
        hottest_ = hottest_fill(ensemble_);
    }
    return *hottest_;
}

const Filled& ScheduleSearch::filled_with(const Recipe& recipe) {
    const auto known = filled_.find(recipe.reading.celsius());
    return known != filled_.end()
               ? known->second
               : filled_.emplace(recipe.reading.celsius(), start_of(ensemble_, recipe)).first->second;
}

std::optional<Schedule> ScheduleSearch::marked(const Recipe& fill, Temperature mark, const ToBeat& to_beat) {
    const std::tuple of{fill.reading.celsius(), mark.celsius(), to_beat.wanted.soon};
    if (const auto known = whole_.find(of); known != whole_.end()) {
        return to_beat.worse(known->second) ? std::nullopt : std::optional(known->second);
    }
    Spread spread = best_spread(ensemble_, filled_with(fill), marked_at(ensemble_, fill, mark), to_beat);
    if (spread.whole) {
        whole_.emplace(of, *spread.schedule);
    }
    return std::move(spread.schedule);
}

/// A fill a little cooler can fall into place better: fewer pours, food in at another moment. Tried around the best
/// mark, where the hottest fill needs top-ups at all.
void ScheduleSearch::try_cooler_fills(std::optional<Schedule>& best, const Wanted& wanted) {
    const Schedule found = *best;
    if (!holds(found) || found.top_ups.empty()) {
        return;
    }
    const Temperature lowest = units::celsius(std::ceil(ensemble_.setup().levels.action_line.celsius()));
    for (double less = 1.0; less <= cooler && !work_is_enough(); less += 1.0) {
        const Temperature reading = found.recipe.reading - units::kelvins(less);
        const auto recipe = reading >= lowest ? recipe_for(ensemble_.setup(), reading) : std::nullopt;
        if (!recipe) {
            return;
        }
        for (const double step : {-1.0, 0.0, 1.0}) {
            const Temperature mark = std::min(found.recipe.top_up_mark + units::kelvins(step), reading);
            auto schedule = marked(*recipe, mark, ToBeat::of(best, wanted));
            // A cooler fill makes the food ready later: only for something that the cook has of it.
            const bool gains = schedule && (schedule->empty < found.empty || wakes(*schedule) < wakes(found) ||
                                            schedule->top_ups.size() < found.top_ups.size() ||
                                            schedule->recipe.pours < found.recipe.pours);
            if (gains) {
                take(best, std::move(schedule));
            }
        }
    }
}

/// Of this fill, with the marks from the hottest down.
void ScheduleSearch::try_marks(std::optional<Schedule>& best, const Recipe& fill, const Wanted& wanted) {
    const double highest = highest_mark(ensemble_.setup(), fill.reading).celsius();
    const double lowest = lowest_mark(ensemble_.setup(), wanted);
    for (double mark = wanted.soon ? lowest : highest; mark >= lowest; mark -= 1.0) {
        auto schedule = marked(fill, units::celsius(mark), ToBeat::of(best, wanted));
        const bool enough =
            schedule && holds(*schedule) && (schedule->top_ups.empty() || (wanted.any && reaches_mark(*schedule)));
        take(best, std::move(schedule));
        if (enough || work_is_enough()) {
            break;
        }
    }
    if (!best) {
        best = marked(fill, fill.reading, ToBeat{nullptr, wanted});
    }
}

/// Where nothing holds after the hottest fill: a little cooler, if that takes another number of rounds. Half a litre of
/// cold water decides that, and with it when the food goes in, and how long the bath is held.
void ScheduleSearch::try_other_rounds(std::optional<Schedule>& best, const Recipe& hottest, const Wanted& wanted) {
    const double lowest = std::ceil(ensemble_.setup().levels.action_line.celsius());
    for (double less = 1.0; less <= cooler; less += 1.0) {
        if ((best && holds(*best)) || hottest.reading.celsius() - less < lowest || work_is_enough()) {
            return;
        }
        const auto fill = recipe_for(ensemble_.setup(), hottest.reading - units::kelvins(less));
        if (fill && fill->pours != hottest.pours) {
            try_marks(best, *fill, wanted);
        }
    }
}

std::optional<Schedule> ScheduleSearch::best(const Wanted& wanted) {
    const std::optional<Recipe>& fill = hottest();
    if (!fill) {
        return std::nullopt;
    }
    std::optional<Schedule> best;
    try_marks(best, *fill, wanted);
    if (!wanted.unwoken && !wanted.lighter_than) {  // what is found for those must be found without as well
        try_other_rounds(best, *fill, wanted);
    }
    if (best && !wanted.any && !wanted.lowest_mark) {  // what is to be ready sooner is not filled cooler
        try_cooler_fills(best, wanted);
    }
    return best;
}

Temperature highest_mark(const Setup& setup, Temperature fill) {
    return units::celsius(std::floor(std::min(fill.celsius(), setup.highest_core.celsius() + 6.0)));
}

std::optional<Schedule> make_schedule(const Ensemble& ensemble, const Wanted& wanted) {
    return ScheduleSearch(ensemble).best(wanted);
}

std::optional<Schedule> carry_on(const Ensemble& ensemble, const Schedule& done, const Wanted& wanted) {
    const Setup& setup = ensemble.setup();
    Filled start{{}, {}, done};
    start.runs.reserve(ensemble.size());
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        start.runs.push_back(ensemble.start(i, false));
    }
    for_each_index(start.runs.size(), [&](std::size_t i) {
        Simulation& run = start.runs[i];
        run.fill(done.recipe);
        for (std::size_t k = 0; k < done.top_ups.size(); ++k) {
            run.advance_to(std::min(done.top_ups[k].at + Duration{late_of(ensemble.scenario(i), k)}, done.seen->at));
            run.top_up(done.recipe, done.top_ups[k].pour);
        }
        run.advance_to(done.seen->at);
        run.see(*done.seen);
    });
    start.moments = deadlines(ensemble, start.runs, done.top_ups.size());
    std::optional<Schedule> best;
    const double highest = highest_mark(setup, std::max(done.recipe.reading, setup.highest_core)).celsius();
    const double lowest = lowest_mark(setup, wanted);
    for (double mark = wanted.soon ? lowest : highest; mark >= lowest; mark -= 1.0) {
        const Recipe recipe = marked_at(ensemble, done.recipe, units::celsius(mark));
        take(best, best_spread(ensemble, start, recipe, ToBeat::of(best, wanted)).schedule);
    }
    return best;
}

}  // namespace holdwater::plan
