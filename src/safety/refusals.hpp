// SPDX-License-Identifier: MIT
// The refusals: when, and in words that a cook understands.
#pragma once

#include "problem/problem.hpp"
#include "safety/standard.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace holdwater::safety {

struct Refusal {
    problem::Problem problem;
    std::string source;  // key of the source behind it
};

/// Why this request is refused; nothing if it is not. First the food itself, then the food without a thermometer, then
/// a target below what the rules, the eaters and the kind of meat allow.
std::optional<Refusal> refusal_of(const Request& request);

/// Key of the figure that the core of a whole piece must reach for people at risk; empty where none applies.
std::string_view at_risk_figure(const Request& request);

/// How long the core of whole red meat must stay there for people at risk.
units::Duration red_meat_hold_at_risk(facts::Ruleset ruleset);

/// The lowest target of a food that is finished over the fire after the bath: where its kill table begins, and never
/// under the floor of its bath.
units::Temperature lowest_over_fire(const facts::Rule& rule);

/// The lowest target that a whole piece may have: that of the rules, or of the people at risk.
units::Temperature lowest_target(const Request& request, const facts::Rule& rule);

/// "63 °C (145 °F)", one decimal only where the figure has one.
std::string in_both(units::Temperature t);

}  // namespace holdwater::safety
