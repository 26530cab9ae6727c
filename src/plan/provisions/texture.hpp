// SPDX-License-Identifier: MIT
// What long holding does to the food: soft and dry, not unsafe.
#pragma once

#include "problem/problem.hpp"

namespace holdwater::plan {

struct Plan;

/// A note (held-long) for each food that the plan holds, once it is ready, for longer than is good for its texture
/// (facts texture.toml). Foods without such a figure get none.
problem::Problems held_notes(const Plan& plan);

}  // namespace holdwater::plan
