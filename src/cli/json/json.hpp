// SPDX-License-Identifier: MIT
// The shapes that all JSON answers share. Numbers are not rounded; null means never, or not credited.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "problem/problem.hpp"
#include "units/quantity.hpp"

namespace holdwater::cli {

using Json = nlohmann::ordered_json;

/// [{"code", "text", "hint", "place"}].
Json problems_json(const problem::Problems& problems);

/// A value in the unit asked for, or null.
Json minutes_or_null(const std::optional<units::Duration>& duration);
Json hours_or_null(const std::optional<units::Duration>& duration);
Json seconds_or_null(const std::optional<units::Duration>& duration);

/// The answer as text: {"schema": 1, ... , "warnings": [...]} and a line feed. `answer` is an object.
std::string answer_text(const Json& answer, const problem::Problems& warnings);

}  // namespace holdwater::cli
