// SPDX-License-Identifier: MIT
// How long the scenarios of a trip may go on before the next top-up. Inside plan/ only.
#pragma once

#include "plan/search/ensemble.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/schedule.hpp"

#include <vector>

namespace holdwater::plan {

/// Serving, since trip.from.
units::Duration serving(const Setup& setup);

/// Every scenario filled, food in; the common start of all that follows.
std::vector<Simulation> filled(const Ensemble& ensemble, const Recipe& recipe);

/// All runs go on, run i as leg(i) says, on all processors; run i is that of scenario i. Returns who met its level.
template <class LegOf>
std::vector<char> go_on_all(const std::vector<Simulation>& runs, const LegOf& leg) {
    std::vector<char> met(runs.size(), 0);
    each_side_by_side(runs.size(), [&](const std::vector<std::size_t>& group) {
        std::vector<Simulation::Leg> legs;
        for (const std::size_t i : group) {
            legs.push_back(leg(i));
        }
        Simulation::go_on(legs);
        for (std::size_t k = 0; k < group.size(); ++k) {
            met[group[k]] = legs[k].met ? 1 : 0;
        }
    });
    return met;
}

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
