// SPDX-License-Identifier: MIT
// One way in which box, food, weather and pots may turn out, drawn from facts spread.
#pragma once

#include "support/replay_box.hpp"
#include "support/spread_draws.hpp"
#include "trip/trip.hpp"

namespace holdwater::support {

/// All that one scenario settles at its start.
struct Way {
    ReplayWorld world;
    double boiling = 0.0;      // C, in the box
    double litres = 1.0;       // poured to meant
    double error = 0.0;        // K, of the thermometer
    double cold = 0.0;         // C
    double liner_start = 0.0;  // C
};

/// A way for the box and the foods of a trip. Its air looks at the trip, which must outlive it.
Way draw_way(const trip::Trip& trip, SpreadDraws& draws);

}  // namespace holdwater::support
