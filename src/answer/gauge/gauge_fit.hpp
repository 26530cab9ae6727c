// SPDX-License-Identifier: MIT
// The cooling line through a stretch of readings, in air that may change. For gauge.cpp.
#pragma once

#include "answer/gauge/gauge.hpp"

#include <span>

namespace holdwater::answer {

/// What air that differs from `mean` has added to a bath of time constant `tau` between `from` and `at` [K]:
/// dD/dt = -(D - (air - mean))/tau, D = 0 at `from`; exact for air that is linear between its points.
units::TemperatureDifference added_by_air(const units::History& air, units::Temperature mean, units::Duration tau,
                                          units::Duration from, units::Duration at);

/// Mean over time of a history between two moments.
units::Temperature mean_of(const units::History& air, units::Duration from, units::Duration to);

struct CoolingFit {
    heat::BoxLoss loss;
    units::Temperature outside;                // mean over the stretch
    units::Duration from;                      // of the first reading of all
    units::TemperatureDifference above;        // of the line over `outside` at `from`
    units::TemperatureDifference start_error;  // of the line at `from`, about 95 %
};

/// `from` is where the line begins, at or before the stretch.
problem::Result<CoolingFit> fit_cooling(std::span<const GaugeReading> stretch, const GaugeQuestion& question,
                                        units::HeatCapacity liner, units::Duration from);

}  // namespace holdwater::answer
