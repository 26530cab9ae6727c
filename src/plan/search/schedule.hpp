// SPDX-License-Identifier: MIT
// Chooses what the cook does: fill reading, top-up mark, and when to top up.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/recipe.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace holdwater::plan {

struct ScheduledTopUp {
    units::Duration at;  // since trip.from
    bool wakes = false;
    PlannedPour pour = {};  // as the cards say it
};

struct Schedule {
    Recipe recipe;
    std::vector<ScheduledTopUp> top_ups;
    std::optional<SeenBath> seen;  // on the way, after the top-ups that come no later
    double allowed = 0.0;          // share of scenarios that may fail, of the ensemble it was made for
    double failing = 1.0;          // share of scenarios in which the bath met its level before a top-up
    double short_of_mark = 0.0;    // share of scenarios in which a top-up did not come up to its mark
    double excess = 0.0;           // K by which the core passes target and tolerance in 95 of 100; negative is room
    bool boils_in_time = true;
    units::Duration weight{0};  // of what it asks of the cook, see burden.hpp
    std::size_t empty = 0;      // top-ups in which the likely scenario pours nothing
};

/// What is asked of a schedule besides that it holds.
struct Wanted {
    std::optional<units::Temperature> lowest_mark =
        std::nullopt;                                            // of its top-ups, for food that is to be ready sooner
    std::optional<units::Duration> lighter_than = std::nullopt;  // the weight of its burden is less than this
    bool unwoken = false;                                        // no top-up in the sleep window
    bool soon = false;  // the next top-up as soon as the pots boil, to the lowest mark that is wanted
    bool any = false;   // the first that holds will do, of the hottest mark first
};

/// Best schedule found: first one whose promises hold, then one whose mark the pots can give, then fewest top-ups that
/// pour nothing, then the least burden. Nothing only if no fill reading can be had at all, or none that is as wanted. A
/// schedule that does not hold shows by how much.
std::optional<Schedule> make_schedule(const Ensemble& ensemble, const Wanted& wanted = {});

/// The highest mark that is of any use after a fill to this reading: above the fill, or the batch's reach, it only
/// wastes fuel.
units::Temperature highest_mark(const Setup& setup, units::Temperature fill);

/// The best way on from a box that was seen on the way (done.seen): fill and top-ups of `done` are behind, others come
/// after. As make_schedule otherwise.
std::optional<Schedule> carry_on(const Ensemble& ensemble, const Schedule& done, const Wanted& wanted = {});

/// True if the schedule keeps its promises in the scenarios it was made for.
bool holds(const Schedule& schedule);

/// True if the pots bring its top-ups to their mark, in the scenarios it was made for.
bool reaches_mark(const Schedule& schedule);

/// The recipe with another mark, and the ladder for it.
Recipe marked_at(const Ensemble& ensemble, Recipe recipe, units::Temperature mark);

/// The schedule with what the cards say of each top-up worked out anew, in this ensemble.
Schedule with_pours(const Ensemble& ensemble, Schedule schedule);

/// Simulates the schedule in one scenario, up to serving; `recording` keeps the histories. `poured`, if given, is
/// called with the box as it is once the food is in and after each top-up.
Simulation replay(const Ensemble& ensemble, const Schedule& schedule, std::size_t scenario, bool recording,
                  const std::function<void(const Simulation&)>& poured = {});

/// Called with a scenario's index and its box.
using Poured = std::function<void(std::size_t, const Simulation&)>;

/// Several scenarios at once, which is as quick as one where they stand side by side (each_side_by_side).
std::vector<Simulation> replay_all(const Ensemble& ensemble, const Schedule& schedule,
                                   const std::vector<std::size_t>& scenarios, bool recording,
                                   const Poured& poured = {});

}  // namespace holdwater::plan
