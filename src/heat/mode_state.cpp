// SPDX-License-Identifier: MIT
#include "heat/mode_state.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::heat {

ModeState::ModeState(const Modes& modes)
    : count_((modes.modes.size() + at_once - 1) / at_once * at_once), numbers_(columns * count_) {
    // A mode that fills up has no weight, so that its rate does not matter; it must be one.
    std::fill_n(column(rate_at), count_, 1.0);
    for (std::size_t n = 0; n < modes.modes.size(); ++n) {
        const Mode& mode = modes.modes[n];
        column(rate_at)[n] = mode.rate;
        column(core_at)[n] = mode.core;
        column(mean_at)[n] = mode.mean;
    }
}

void ModeState::make_factors(double dt) {
    made_for_ = dt;
    const double* rate = column(rate_at);
    for (std::size_t n = 0; n < count_; ++n) {
        const double lost = -std::expm1(-rate[n] * dt);
        column(decay_at)[n] = 1.0 - lost;
        column(gain_at)[n] = lost / rate[n];
    }
}

void ModeState::step(double dt, double slope) {
    if (made_for_ != dt) {
        make_factors(dt);
    }
    const double* decay = column(decay_at);
    const double* gain = column(gain_at);
    double* excess = column(excess_at);
    for (std::size_t n = 0; n < count_; ++n) {
        excess[n] = excess[n] * decay[n] + slope * gain[n];
    }
}

void ModeState::shift(double kelvins) {
    double* excess = column(excess_at);
    for (std::size_t n = 0; n < count_; ++n) {
        excess[n] += kelvins;
    }
}

}  // namespace holdwater::heat
