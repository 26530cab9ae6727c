// SPDX-License-Identifier: MIT
// No act without litres: nobody lights a fire, or is woken, to pour nothing.
#pragma once

#include "plan/search/scenario_result.hpp"

namespace holdwater::plan {

/// A schedule, and what became of it in the scenarios of an ensemble.
struct Tried {
    Schedule schedule;
    std::vector<ScenarioResult> results;
};

/// Indices of the top-ups in which the likely litres would be printed as none; see is_act().
std::vector<std::size_t> empty_acts(const Ensemble& ensemble, const std::vector<ScenarioResult>& results);

/// The same without empty acts, if it keeps its promises without them in the same scenarios; else with the top-up mark
/// as little higher as gives them litres, if that keeps them. What does not hold, or can be mended by neither, comes
/// back as it was.
Tried without_empty_acts(const Ensemble& ensemble, Tried tried);

}  // namespace holdwater::plan
