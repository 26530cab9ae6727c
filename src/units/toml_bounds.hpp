// SPDX-License-Identifier: MIT
// Bounds on a TOML text before it is parsed: the library reads tables in tables by recursion, and a key of many
// thousand parts takes the whole stack. Every reader of TOML asks here first.
#pragma once

#include "problem/problem.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace holdwater::units {

/// Parts of one dotted key, and brackets open at once. No file of this program needs more than four (judgement).
inline constexpr std::size_t most_toml_depth = 16;
/// The longest file of this program has a tenth of that (judgement).
inline constexpr std::size_t most_toml_bytes = 2'000'000;

/// The first place where the text goes past these bounds; nothing where it stays within them. A text that is no TOML at
/// all may pass: the parser says what is wrong with it. Errors: toml-too-deep, toml-too-big.
std::optional<problem::Problem> beyond_toml_bounds(std::string_view text, const std::string& file_name);

}  // namespace holdwater::units
