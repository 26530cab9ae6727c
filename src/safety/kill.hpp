// SPDX-License-Identifier: MIT
// Kill along a core history, from published rows only.
#pragma once

#include "facts/facts.hpp"
#include "units/history.hpp"

#include <optional>

namespace holdwater::safety {

/// Hold time that the standard asks at a constant core temperature; nothing below its first row. Between two rows the
/// lower row's time, above the last row its time.
std::optional<units::Duration> hold_time(const facts::KillStandard& standard, units::Temperature core);

/// Fraction of the standard met along a history: integral of dt / hold_time. 1 = met.
double kill_fraction(const facts::KillStandard& standard, const units::History& core);

/// First moment at which `times` the standard is met along the history; nothing if never.
std::optional<units::Duration> moment_met(const facts::KillStandard& standard, const units::History& core,
                                          double times = 1.0);

/// 2 when the core takes over one hour from 10 to 54.4 C (heat adaptation, judgement from two papers), else 1.
double adaptation_factor(std::optional<units::Duration> come_up);

}  // namespace holdwater::safety
