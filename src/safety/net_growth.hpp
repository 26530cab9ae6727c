// SPDX-License-Identifier: MIT
// C. perfringens along a core history: what grew while the food warmed, less what died while it was hot.
#pragma once

#include "facts/facts.hpp"
#include "units/history.hpp"

#include <optional>

namespace holdwater::safety {

/// How fast vegetative cells die: D(T) = D 10^((reference - T) / z), with one z below the reference and one above.
struct VegetativeKill {
    units::Temperature reference;          // 60 C
    units::Duration d;                     // time for one log at the reference
    units::TemperatureDifference z_below;  // the smaller, the slower the kill
    units::TemperatureDifference z_above;  // the larger, the slower the kill
    units::Temperature from;               // below it nothing is counted as killed
};

/// The figures of the facts (perfringens.*). Cautious: everywhere the slower kill.
VegetativeKill likely_kill();
VegetativeKill cautious_kill();

/// Rate at which vegetative cells die [log10/h]. Valid 53 to 63 C, where cells were seen to die; 0 below `from`, and
/// above 63 C as the formula goes on.
double kill_rate(const VegetativeKill& kill, units::Temperature core);

/// log10 of C. perfringens over what the food held when it went in, at the end of the history: growth after a lag with
/// q0 (growth.hpp) less kill, never below 0 on the way, so that a kill is no credit for what grows after it. 0 or more.
/// Where both go on at one temperature, a stretch is taken as killed first and grown afterwards, which leaves more.
double net_growth(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const units::History& core);

/// First moment at or after `from` at which nothing is left of what grew before it; nothing if never along the history.
std::optional<units::Duration> moment_undone(const facts::GrowthModel& model, double q0, const VegetativeKill& kill,
                                             const units::History& core, units::Duration from = units::Duration{0});

}  // namespace holdwater::safety
