// SPDX-License-Identifier: MIT
// The shapes that all JSON answers share. Numbers are not rounded; null means never, or not credited. Only the sources
// of this folder see the whole library; who asks for an answer gets text.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string>

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
