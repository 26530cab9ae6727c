// SPDX-License-Identifier: MIT
// Bounds on a TOML text before it is parsed: the library reads tables in tables by recursion, and a key of many
// thousand parts takes the whole stack. Every reader of TOML asks here first.
#pragma once

#include "problem/problem.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace holdwater::units {

/// The first place where the text goes past bounds::toml_bytes or bounds::toml_depth; nothing where it stays within
/// them. A text that is no TOML at all may pass: the parser says what is wrong with it. Errors: toml-too-deep,
/// toml-too-big.
std::optional<problem::Problem> beyond_toml_bounds(std::string_view text, const std::string& file_name);

}  // namespace holdwater::units
