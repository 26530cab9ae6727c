// SPDX-License-Identifier: MIT
// The refusals: when, and in words that a cook understands.
#pragma once

#include <optional>
#include <string>

#include "problem/problem.hpp"
#include "safety/standard.hpp"

namespace holdwater::safety {

/// What is refused whatever the target is: the food itself, or the food without a thermometer.
std::optional<problem::Problem> refuse_food(const Request& request, bool needs_finish);

/// A target below what the rules, the eaters and the kind of meat allow. `rule` is the request's.
std::optional<problem::Problem> refuse_target(const Request& request, const facts::Rule& rule);

/// The lowest target that a whole piece may have: that of the rules, or of the people at risk.
units::Temperature lowest_target(const Request& request, const facts::Rule& rule);

/// "63 °C (145 °F)", one decimal only where the figure has one.
std::string in_both(units::Temperature t);

}  // namespace holdwater::safety
