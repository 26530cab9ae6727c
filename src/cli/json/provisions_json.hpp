// SPDX-License-Identifier: MIT
// What a plan settles around the box, as JSON.
#pragma once

#include "cli/json/json.hpp"
#include "plan/provisions/provisions.hpp"

namespace holdwater::cli {

/// {"portions", "water", "fuel", "ice", "sides", "clashes", "sear", "leftovers"}; fuel and ice are null if there is
/// none.
Json around_json(const plan::Provisions& around);

}  // namespace holdwater::cli
