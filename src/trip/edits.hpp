// SPDX-License-Identifier: MIT
// What is otherwise in one trip than in another, key by key as a trip file has them. Used by amend.cpp only.
#pragma once

#include "trip/trip.hpp"

#include <string>
#include <vector>

namespace holdwater::trip {

/// One key of one table.
struct Edit {
    std::string table;      // "trip", "food", "box", "weather", "fire"
    std::size_t index = 0;  // of a list of tables
    std::string key;
    std::string value;   // as it is to stand there; empty: the key goes
    std::string behind;  // where the key is not there yet: the key that it is written behind
};

std::vector<Edit> edits_between(const Trip& before, const Trip& after);

/// Places of foods that are in the first only.
std::vector<std::size_t> foods_gone(const Trip& before, const Trip& after);

}  // namespace holdwater::trip
