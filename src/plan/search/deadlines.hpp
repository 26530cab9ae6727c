// SPDX-License-Identifier: MIT
// How long the scenarios of a trip may go on before the next top-up. Inside plan/ only.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/schedule.hpp"

#include <vector>

namespace holdwater::plan {

/// Serving, since trip.from.
units::Duration serving(const Setup& setup);

/// Every scenario filled, food in; the common start of all that follows.
std::vector<Simulation> filled(const Ensemble& ensemble, const Recipe& recipe);

/// The moments [s since trip.from] at which each scenario would meet its level, its next lateness taken off. Only the
/// first ones are worked out, more than may fail; the others come no sooner than the last of these and stand as the
/// end.
std::vector<double> deadlines(const Ensemble& ensemble, std::vector<Simulation> runs, std::size_t top_up);

/// Where all schedules of one fill begin, with what they all need of it.
struct Filled {
    std::vector<Simulation> runs;
    std::vector<double> moments;  // deadlines of the next top-up
    Schedule done = {};           // what is behind them besides the fill; its recipe is not used
};
Filled start_of(const Ensemble& ensemble, const Recipe& recipe);

/// How long all but the allowed share of these may be left alone from now on, in the coldest air of the trip; endless
/// where they keep to its end. Only those are followed that come first to their level by the forecast `moments`: the
/// order is the same, near enough.
units::Duration alone_in_the_cold(const Ensemble& ensemble, const std::vector<Simulation>& runs,
                                  const std::vector<double>& moments);

}  // namespace holdwater::plan
