// SPDX-License-Identifier: MIT
// What a plan asks of the cook, weighed: of two that hold, the one that asks less is better.
#pragma once

#include "trip/trip.hpp"
#include "units/quantity.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::plan {

struct Setup;
struct Schedule;
struct Plan;

/// Work at the fire, from lighting it to the last pour or the food in; since trip.from.
struct Act {
    units::Duration from;
    units::Duration to;
    units::Volume boiled;
};

/// Weights: facts burden.*, all judgement.
struct Burden {
    units::Duration fire{0};   // at it, by day
    units::Duration woken{0};  // at it, in the sleep window
    std::size_t wakings = 0;   // times that somebody gets up for it
    units::Volume boiled;
    units::Mass fuel;              // likely
    bool gas = false;              // that fuel
    units::Duration held{0};       // of the foods, the longest that one is done before its meal, slack taken off
    units::Duration past_best{0};  // of the foods, the longest that one is held past what its texture bears
    std::size_t unsure = 0;        // foods that are ready in time only if the bath reads more than it does in 95 of 100
    bool out_of_reach = false;     // its pots fall short of its mark too often for a promise
    units::Duration rushed{0};     // what is missing of the slack until the last chance to light the fire
    /// All of it as time at the fire by day.
    units::Duration weight() const;
};

/// Of what is done at the fire; held and rushed stay zero. `boiling`: of the water.
Burden burden_of(const trip::Trip& trip, units::Temperature boiling, const std::vector<Act>& acts);

/// Of a schedule that may still grow: fill and top-ups by what is planned for them.
Burden burden_of(const Setup& setup, const Schedule& schedule);

/// Of a plan, whose foods are ready.
Burden burden_of(const Plan& plan);

/// Top-ups of a plan that somebody must wake for.
std::size_t wakes_of(const Plan& plan);

}  // namespace holdwater::plan
