// SPDX-License-Identifier: MIT
#include "plan/advice/lever.hpp"

#include <algorithm>

namespace holdwater::plan {
std::vector<Lever> levers_of(const trip::Trip& trip) {
    std::vector<Lever> levers;
    add_rule_levers(trip, levers);
    add_time_levers(trip, levers);
    add_taste_levers(trip, levers);
    add_piece_levers(trip, levers);
    add_box_levers(trip, levers);
    std::stable_sort(levers.begin(), levers.end(), [](const Lever& a, const Lever& b) { return a.kind < b.kind; });
    return levers;
}

}  // namespace holdwater::plan
