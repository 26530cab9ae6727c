// SPDX-License-Identifier: MIT
// Side dishes, timed backwards from the meal, and whether their pots are free.
#pragma once

#include "problem/problem.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <string>
#include <vector>

namespace holdwater::plan {

struct Plan;

struct SideStart {
    std::string name;
    units::LocalTime begin;  // ready at serving, of several sittings at the first
    units::Duration takes;
};

/// A boiling of bath water during which a side dish, or food that is finished over the fire, also wants a pot. All
/// sides cook up to serving, so the moment with the most pots in use is the end of the boiling.
struct PotClash {
    units::LocalTime from;   // fire for the boiling lit
    units::LocalTime until;  // poured
    int needed = 0;          // pots, sides and finish included
    int there = 0;
    std::vector<std::string> sides;  // and food over the fire
};

struct Sides {
    std::vector<SideStart> list;    // by the clock
    std::vector<PotClash> clashes;  // by the clock
    problem::Problems notes;        // warnings: side-clash, too-many-sides, side-before-fire
};
Sides sides_of(const Plan& plan);

}  // namespace holdwater::plan
