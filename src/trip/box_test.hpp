// SPDX-License-Identifier: MIT
// What a test of a box can be taken for, the same in trip files and for a box test alone.
#pragma once

#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::trip {

/// Warning test-short for one under ranges::short_test, in which the reading error and the liner make most of the fall.
std::optional<problem::Problem> short_test(units::Duration span);

/// Error loss-out-of-range for a loss outside ranges::loss: the readings are not of a closed box that cools.
std::optional<problem::Problem> impossible_loss(units::HeatLoss loss);

}  // namespace holdwater::trip
