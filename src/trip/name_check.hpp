// SPDX-License-Identifier: MIT
// Whether a name can be printed is known where the typeface is; it is handed in.
#pragma once

#include "problem/problem.hpp"

#include <functional>
#include <optional>
#include <string_view>

namespace holdwater::trip {

/// What keeps a name from being printed on a card, without a place; nothing if it can be printed.
using NameCheck = std::function<std::optional<problem::Problem>(std::string_view name)>;

}  // namespace holdwater::trip
