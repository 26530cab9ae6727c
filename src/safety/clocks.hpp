// SPDX-License-Identifier: MIT
// The clocks: how long the core takes through the zone in which things grow, and how long a bath was too cool.
#pragma once

#include "facts/facts.hpp"
#include "safety/after_fall.hpp"
#include "units/history.hpp"

#include <optional>
#include <string>

namespace holdwater::safety {

/// Time the core needs from 10 C to 54.4 C; nothing if it never arrives. A history that starts above 10 C counts from
/// its start.
std::optional<units::Duration> come_up(const units::History& core);

enum class ComeUpVerdict { fine, slow, refused };  // under 3 h, 3 to 6 h, over 6 h or never
ComeUpVerdict judge_come_up(std::optional<units::Duration> come_up);

/// log10 growth of C. perfringens along a history [log10], closed form of growth.hpp without a ceiling; q0 as in the
/// model's facts. Without lag: the exponent A itself. Source: juneja-2011. Nothing grows outside the model's limits.
double growth_with_lag(const facts::GrowthModel& model, const units::History& core, double q0);
double growth_without_lag(const facts::GrowthModel& model, const units::History& core);

/// The clock along a bath and the core in it, from a moment on: it starts when the bath falls below the floor and stops
/// only when the core (and the bath) is back above it, so a top-up that warms the water stops nothing. Later falls add
/// to the same clock. Growth is that of the warmer or cooler side, core or bath, whichever grows more, from the first
/// fall to the end, with the cautious q0. Both histories run on the same time and reach to the same end.
/// `written_core`, where somebody measured it: below the floor it starts the clock as the bath does.
Fall measure_fall(const units::History& bath, const units::History& core, units::Temperature floor,
                  units::Duration from, const facts::GrowthModel& model, const units::History& written_core = {});

/// The two cooling clocks of leftovers: 57 to 21 C, then 21 to 5 C.
struct Cooling {
    std::optional<units::Duration> first;  // nothing: it never came down that far
    std::optional<units::Duration> second;
    bool in_time = false;  // both parts within their limits
};
/// `slowest` is the warmest point of the leftovers while they cool. A history that starts below 57 C counts from its
/// start.
Cooling judge_cooling(const units::History& slowest);

}  // namespace holdwater::safety
