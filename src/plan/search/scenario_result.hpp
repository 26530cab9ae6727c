// SPDX-License-Identifier: MIT
// A schedule simulated in every scenario, and of each only what the plan goes on to ask: whole histories of
// thousands of scenarios would fill the memory of a small machine.
#pragma once

#include "plan/search/schedule.hpp"

#include <optional>
#include <vector>

namespace holdwater::plan {

struct FoodResult {
    /// The core at its target and the kill that is asked met, since trip.from; nothing where not by serving.
    std::optional<units::Duration> done;
    /// Done, and nothing left of the C. perfringens that grew while it warmed (cautious). What is finished over the
    /// fire is ready for that when it is done: the fire kills what grew.
    std::optional<units::Duration> ready;
    units::Temperature coolest;  // reading of the bath from food in until ready, or until it was eaten
    units::Temperature peak;
    double kill = 0.0;                                            // multiples of what is asked, at serving
    std::optional<units::Duration> come_up = units::Duration{0};  // nothing: not by serving
    double growth_with_lag = 0.0;                                 // log10 until the core passed 54.4 C
    double growth_without_lag = 0.0;
    double growth_left = 0.0;  // log10, growth less kill when it is done, or at serving; cautious
};

struct ScenarioResult {
    bool failed = false;                  // the bath was below its level between top-ups
    bool short_of_mark = false;           // a top-up did not come up to its mark
    units::TemperatureDifference excess;  // of the hottest core over its target and tolerance
    units::Duration food_in;
    units::Temperature after_food;             // reading an hour after the food went in
    units::Temperature at_end;                 // at serving
    std::vector<units::Temperature> readings;  // at each top-up, on arrival
    std::vector<units::Volume> boiling;        // poured at each top-up
    std::vector<units::Volume> fill;           // poured by each pour of it
    units::Volume over_rim;                    // that the fill would have stood too high, food in; negative: not
    units::Volume spilled;                     // the most that stood too high after a top-up
    std::vector<units::Volume> out;            // of the bath, taken out before each top-up
    std::vector<units::Temperature> bath;      // at the moments of curve_moments
    std::vector<units::Temperature> core;      // of the first food
    std::vector<FoodResult> foods;
};

/// Every quarter of an hour from trip.from to serving.
std::vector<units::Duration> curve_moments(const Setup& setup);

/// All scenarios, in their order, on all processors.
std::vector<ScenarioResult> simulate(const Ensemble& ensemble, const Schedule& schedule);

/// True if bath and cores keep their promises in all but the allowed share of scenarios.
bool holds_in(const Ensemble& ensemble, const std::vector<ScenarioResult>& results);

/// True if the pots bring the top-ups to their mark in all but the allowed share.
bool reaches_mark_in(const Ensemble& ensemble, const std::vector<ScenarioResult>& results);

}  // namespace holdwater::plan
