// SPDX-License-Identifier: MIT
// A planned schedule in one scenario as the method of lines meets it. Lid and unstirred layer are left out, which that
// side does not know; the foods' spreads of shape and properties stay at the likely value.
#pragma once

#include "plan/search/schedule.hpp"
#include "support/method_of_lines.hpp"

#include <cstddef>

namespace holdwater::support {

/// The scenario with what the lines do not know taken out.
plan::Scenario without_lid_and_layer(plan::Scenario scenario);

struct LinesOfRun {
    LinesCase lines;       // its time 0 is the moment the food goes in
    plan::Simulation run;  // simulated to serving by the engine, recorded
    double food_in = 0.0;  // s since trip.from
};

/// Trips of one food in steady air only: `air` [C]. `nodes`: of the grid in each direction.
LinesOfRun lines_of_run(const plan::Setup& setup, const plan::Schedule& schedule, const plan::Scenario& scenario,
                        double air, int nodes);

/// The demo trip in steady air with one food of this shape, thin enough that all promises can be kept.
trip::Trip steady_trip(facts::Shape shape, double air);

}  // namespace holdwater::support
