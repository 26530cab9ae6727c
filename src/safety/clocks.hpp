// SPDX-License-Identifier: MIT
// The clocks: how long the core takes through the zone in which things grow, and how long a bath was too cool.
#pragma once

#include <optional>
#include <string>

#include "facts/facts.hpp"
#include "units/history.hpp"

namespace holdwater::safety {

/// Time the core needs from 10 C to 54.4 C; nothing if it never arrives. A history that starts above 10 C counts from
/// its start.
std::optional<units::Duration> come_up(const units::History& core);

enum class ComeUpVerdict { fine, slow, refused };  // under 3 h, 3 to 6 h, over 6 h or never
ComeUpVerdict judge_come_up(std::optional<units::Duration> come_up);

/// log10 growth of C. perfringens along a history, closed form (juneja-2011). Without lag: the exponent A itself.
double growth_with_lag(const facts::GrowthModel& model, const units::History& core, double q0);
double growth_without_lag(const facts::GrowthModel& model, const units::History& core);

/// What to do after the bath was below the hold floor (decisions.md).
enum class FallAction { none, finish_and_eat_next, finish_and_eat_now, throw_away };
struct Fall {
    units::Duration below_floor;  // bath below the hold floor; no top-up stops or resets it
    units::Duration below_50;
    double growth = 0.0;          // log10, cautious q0
};
FallAction judge_fall(const Fall& fall, facts::Ruleset ruleset);

}  // namespace holdwater::safety
