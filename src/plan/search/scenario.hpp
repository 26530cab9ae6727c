// SPDX-License-Identifier: MIT
// One way in which the uncertain things may turn out, drawn evenly over facts/spread.toml.
#pragma once

#include "units/quantity.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::plan {

/// "place" members lie between -1 (low end of the band) and 1 (high end), 0 the likely value: their width depends on
/// the food, the box or the thermometer. The others are absolute.
struct Scenario {
    double thickness = 0.0;       // place
    double diffusivity = 0.0;     // place: -1 slow, 1 fast
    double film = 0.0;            // place: -1 slow, 1 fast
    double start = 0.0;           // K on the food's start temperature
    double loss = 0.0;            // place in the band of the box test
    double outside = 0.0;         // K on the forecast
    double wind = 0.0;            // classes on the wind class
    double litres = 1.0;          // factor on what is poured
    double boiling_cooled = 0.0;  // K on the way from fire to box
    double reading = 0.0;         // place in the thermometer's error: 1 reads too high by all of it
    double late = 0.0;            // 0 to 1, see late_of
    double lid = 0.0;             // s each time
    double colder = 0.0;          // K, unstirred box
};

/// The middle of every spread.
Scenario likely_scenario();

/// A low-discrepancy set (Sobol) of `points` scenarios, once for each of the shifts: the set as it is, then moved by a
/// random step in every direction, wrapped around (Cranley-Patterson rotation). The seed is fixed: the same call gives
/// the same scenarios.
std::vector<Scenario> draw_scenarios(std::size_t points, std::size_t shifts = 1);

/// How late the n-th top-up is poured [s], differing from one to the next, evenly spread over facts spread
/// "top-up.late".
double late_of(const Scenario& scenario, std::size_t top_up);

}  // namespace holdwater::plan
