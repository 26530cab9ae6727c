// SPDX-License-Identifier: MIT
// Which limit a plan broke, in words that a cook understands; and what is worth saying about a good one.
#pragma once

#include "plan/search/scenario_result.hpp"
#include "plan/search/schedule.hpp"

namespace holdwater::plan {

/// `diagnose`: find out which limit binds, which costs about one search where a bath cannot be held.
problem::Problems fill_impossible(const Setup& setup, bool diagnose);
problem::Problems limits_broken(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan,
                                const std::vector<ScenarioResult>& results, bool diagnose);
/// Notes and warnings of a plan that holds.
problem::Problems remarks(const Setup& setup, const Plan& plan);

}  // namespace holdwater::plan
