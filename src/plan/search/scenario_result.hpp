// SPDX-License-Identifier: MIT
// A schedule lived through in every scenario, and of each only what the plan goes on to ask: whole histories of
// thousands of scenarios would fill the memory of a small machine.
#pragma once

#include <vector>

#include "plan/search/schedule.hpp"

namespace holdwater::plan {

/// A moment that never comes within a trip, so that quantiles push past serving.
inline constexpr double never = 1e9;

/// Times are seconds since trip.from; never where the core did not arrive by serving.
struct FoodResult {
    double ready = never;
    double peak = 0.0;                // C
    double kill = 0.0;                // multiples of what is asked, at serving
    double come_up = 0.0;             // s
    double growth_with_lag = 0.0;     // log10 until the core passed 54.4 C
    double growth_without_lag = 0.0;
};

struct ScenarioResult {
    bool failed = false;   // the bath was below its level between top-ups
    double excess = 0.0;   // K of the hottest core over its target and tolerance
    units::Duration food_in;
    double after_food = 0.0;       // C, an hour after the food went in
    double at_end = 0.0;           // C, at serving
    std::vector<double> readings;  // C, at each top-up, on arrival
    std::vector<double> litres;    // m3 boiling, at each top-up
    std::vector<double> out;       // m3 of bath taken out before it
    std::vector<double> bath;      // C, at the moments of curve_moments
    std::vector<double> core;      // C, of the first food
    std::vector<FoodResult> foods;
};

/// Every quarter of an hour from trip.from to serving.
std::vector<units::Duration> curve_moments(const Setup& setup);

/// All scenarios, in their order, on all processors.
std::vector<ScenarioResult> simulate(const Ensemble& ensemble, const Schedule& schedule);

/// True if bath and cores keep their promises in all but the allowed share of scenarios.
bool holds_in(const Ensemble& ensemble, const std::vector<ScenarioResult>& lived);

}  // namespace holdwater::plan
