// SPDX-License-Identifier: MIT
// A cook who has nothing but the printed cards follows them, in one way in which box, food, weather and cook may turn
// out by facts spread. What the cards promise is held against what became of it.
#pragma once

#include "safety/standard.hpp"
#include "support/printed_plan.hpp"
#include "support/spread_draws.hpp"
#include "trip/trip.hpp"

#include <map>
#include <string>
#include <vector>

namespace holdwater::support {

/// What the box and its food must be kept at, by the rules.
struct ToKeep {
    std::vector<safety::Standard> standards;  // in the trip's order
    double floor = 0.0;                       // C, of the water that the food meets: the strictest
    static ToKeep of(const trip::Trip& trip);
};

/// True for food that the box of these tests has a grid for: slabs, rounds and balls with water all round, slabs also
/// on the bottom or in twos. Blocks are left out: their third direction would have to be left away, which warms them
/// more slowly than they do.
bool has_grid(const trip::Food& food);

/// Promises by name; true: kept. A promise that the cards of this trip do not make is absent.
using Kept = std::map<std::string, bool>;

/// One way, lived through from the fire to the serving and a late meal.
Kept follow(const trip::Trip& trip, const ToKeep& keep, const PrintedPlan& cards, SpreadDraws& draws);

namespace promise {
inline constexpr const char* floor = "bath never under the floor, food in";
inline constexpr const char* ready = "core done at the printed ready time";
inline constexpr const char* peak = "core never over the printed peak";
inline constexpr const char* leave = "night: left alone as long as printed, above the floor";
inline constexpr const char* look = "reading: looked at again as printed and topped up, above the floor";
inline constexpr const char* wait = "meal late: above the floor until the printed time";
inline constexpr const char* fill = "printed pots bring the fill to its reading";
inline constexpr const char* mark = "top-ups reach their mark, pouring on from the printed pots";
inline constexpr const char* ladder = "ladder: its litres alone come within half a kelvin of the mark";
inline constexpr const char* rim_fill = "rim: the fill with its food stays below it";
inline constexpr const char* rim = "rim: top-ups stay below it";
}  // namespace promise

}  // namespace holdwater::support
