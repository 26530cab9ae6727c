// SPDX-License-Identifier: MIT
// One piece in a constant bath: when its core is warm, when it is safe, and how thick it may be.
#pragma once

#include "facts/facts.hpp"
#include "heat/body.hpp"
#include "problem/problem.hpp"
#include "safety/standard.hpp"
#include "units/history.hpp"

#include <optional>

namespace holdwater::answer {

struct HoldQuestion {
    heat::Body body;
    heat::FoodProperties properties;
    units::FilmCoefficient film;  // bag included
    units::Temperature bath;
    units::Temperature start;
    units::Temperature target;  // the core is done at target less 1 K
};

/// Times since the food went in; nothing = never within 72 h, or not credited at this bath.
struct HoldAnswer {
    std::optional<units::Duration> core_at_target;
    std::optional<units::Duration> come_up;   // core 10 to 54.4 C
    std::optional<units::Duration> kill_met;  // with the adaptation factor
    std::optional<units::Duration> safe;      // kill met and any core temperature that the rule asks
    std::optional<units::Duration> done;      // safe and at target
};

/// The core in a constant bath, dense enough that linear interpolation is good to 0.01 K.
problem::Result<units::History> core_in_constant_bath(const HoldQuestion& question);

problem::Result<HoldAnswer> hold(const HoldQuestion& question, const safety::Standard& standard);

/// When a core history meets a standard: kill rows times the adaptation factor, and the core temperature asked.
struct CoreMilestones {
    std::optional<units::Duration> come_up;
    std::optional<units::Duration> kill_met;
    std::optional<units::Duration> safe;
};
CoreMilestones judge_core(const units::History& core, const safety::Standard& standard);

/// The thickest piece of this shape whose core comes up within the refusal limit in this bath, to 1 mm (rounded
/// down); nothing if even 5 mm does not. The question's thickness is ignored.
std::optional<units::Length> thickest_piece(HoldQuestion question);

}  // namespace holdwater::answer
