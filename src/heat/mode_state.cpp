// SPDX-License-Identifier: MIT
#include "heat/mode_state.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::heat {

ModeState::ModeState(const Modes& modes)
    : count_((modes.modes.size() + lanes - 1) / lanes * lanes),
      numbers_((columns + 3 * (step_lengths + 1)) * count_),
      mean_at_once_(modes.mean_at_once) {
    // A mode that fills up has no weight, so that its rate does not matter; it must be one.
    std::fill_n(column(rate_at), count_, 1.0);
    for (std::size_t n = 0; n < modes.modes.size(); ++n) {
        const Mode& mode = modes.modes[n];
        column(rate_at)[n] = mode.rate;
        column(core_at)[n] = mode.core;
        column(surface_at)[n] = mode.surface;
        column(mean_at)[n] = mode.mean;
    }
    // The shortest step needs exponentials; each longer one is the shorter one twice:
    // decay(2h) = decay(h)^2, gain(2h) = gain(h) (1 + decay(h)).
    make_other(step_length(0));
    std::copy_n(factors(step_lengths), 3 * count_, factors(0));
    lag_[0] = lag_[step_lengths];
    for (std::size_t r = 1; r < step_lengths; ++r) {
        const double* half = factors(r - 1);
        double* whole = factors(r);
        for (std::size_t n = 0; n < count_; ++n) {
            whole[n] = half[n] * half[n];
            whole[count_ + n] = half[count_ + n] * (1.0 + half[n]);
        }
        finish(r);
    }
}

void ModeState::finish(std::size_t rung) {
    const double* rate = column(rate_at);
    const double* mean = column(mean_at);
    const double* gain = factors(rung) + count_;
    double* mean_lost = factors(rung) + 2 * count_;
    double lag = 0.0;
    for (std::size_t n = 0; n < count_; ++n) {
        mean_lost[n] = mean[n] * rate[n] * gain[n];
        lag += mean[n] * gain[n];
    }
    lag_[rung] = lag;
}

void ModeState::make_other(double dt) {
    other_dt_ = dt;
    const double* rate = column(rate_at);
    double* decay = factors(step_lengths);
    double* gain = decay + count_;
    for (std::size_t n = 0; n < count_; ++n) {
        const double lost = -std::expm1(-rate[n] * dt);
        decay[n] = 1.0 - lost;
        gain[n] = lost / rate[n];
    }
    finish(step_lengths);
}

void ModeState::shift(double kelvins) {
    double* excess = column(excess_at);
    for (std::size_t n = 0; n < count_; ++n) {
        excess[n] += kelvins;
    }
}

}  // namespace holdwater::heat
