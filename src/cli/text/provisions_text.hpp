// SPDX-License-Identifier: MIT
// What a plan settles around the box, for a terminal and as JSON.
#pragma once

#include "cli/json/json.hpp"
#include "plan/provisions/provisions.hpp"
#include "trip/trip.hpp"

#include <string>

namespace holdwater::cli {

/// Short lines, one heading a part, numbers rounded to the safe side. Warnings are told elsewhere.
std::string around_text(const plan::Provisions& around, const trip::Trip& trip);

/// {"portions", "water", "fuel", "ice", "sides", "clashes", "sear", "leftovers"}; fuel and ice are null if there is
/// none.
Json around_json(const plan::Provisions& around);

}  // namespace holdwater::cli
