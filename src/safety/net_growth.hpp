// SPDX-License-Identifier: MIT
// C. perfringens along a core history: what grew while the food warmed, less what died while it was hot.
#pragma once

#include "facts/facts.hpp"
#include "units/history.hpp"

#include <optional>

namespace holdwater::safety {

struct Standard;

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

/// What a moment leaves of what grew before it, and how long that lasts.
struct LeftOver {
    double log10 = 0.0;  // at the moment: net_growth of the history up to it
    std::optional<units::Duration>
        undone;  // first moment from then on with nothing left; nothing: not along the history
};
LeftOver left_over(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const units::History& core,
                   units::Duration from);

/// The same on the cautious side: the cautious start of the cells of this model, the slower kill. Food may be eaten
/// from a bath from `undone` on, never before.
LeftOver cautious_left_over(const facts::GrowthModel& model, const units::History& core, units::Duration from);

/// Of food that meets its standard at `done`: what is then left of what grew in it, and from when on it is ready
/// (`undone`). The one rule for plan, review and hold: ready is done, and nothing left of what grew. What is finished
/// over the fire is ready for that when it is done, since the fire kills what grew; so is food without a growth model.
LeftOver ready_after(const Standard& standard, const units::History& core, units::Duration done);

/// First moment at or after `from` at which nothing is left of what grew before it; nothing if never along the history.
std::optional<units::Duration> moment_undone(const facts::GrowthModel& model, double q0, const VegetativeKill& kill,
                                             const units::History& core, units::Duration from = units::Duration{0});

}  // namespace holdwater::safety
