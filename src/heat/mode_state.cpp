// SPDX-License-Identifier: MIT
#include "heat/mode_state.hpp"

#include <cmath>

namespace holdwater::heat {

ModeState::ModeState(const Modes& modes) : mean_at_once_(modes.mean_at_once), excess_(modes.modes.size(), 0.0) {
    const std::size_t count = modes.modes.size();
    for (auto* column : {&rate_, &core_, &surface_, &mean_}) {
        column->reserve(count);
    }
    for (const Mode& mode : modes.modes) {
        rate_.push_back(mode.rate);
        core_.push_back(mode.core);
        surface_.push_back(mode.surface);
        mean_.push_back(mode.mean);
    }
    for (Factors& factors : factors_) {
        factors.decay.resize(count);
        factors.gain.resize(count);
        factors.mean_lost.resize(count);
    }
    // The shortest step needs exponentials; each longer one is the shorter one twice:
    // decay(2h) = decay(h)^2, gain(2h) = gain(h) (1 + decay(h)).
    factors_[step_lengths].dt = 0.0;
    choose(step_length(0), step_lengths);
    factors_[0] = factors_[step_lengths];
    for (std::size_t r = 1; r < step_lengths; ++r) {
        const Factors& half = factors_[r - 1];
        Factors& whole = factors_[r];
        whole.dt = step_length(r);
        for (std::size_t n = 0; n < count; ++n) {
            whole.decay[n] = half.decay[n] * half.decay[n];
            whole.gain[n] = half.gain[n] * (1.0 + half.decay[n]);
        }
        finish(whole);
    }
}

void ModeState::finish(Factors& factors) const {
    factors.lag = 0.0;
    for (std::size_t n = 0; n < rate_.size(); ++n) {
        factors.mean_lost[n] = mean_[n] * rate_[n] * factors.gain[n];
        factors.lag += mean_[n] * factors.gain[n];
    }
}

void ModeState::choose(double dt, std::size_t rung) {
    chosen_ = rung;
    Factors& factors = factors_[rung];
    if (rung < step_lengths || factors.dt == dt) {
        return;
    }
    factors.dt = dt;
    for (std::size_t n = 0; n < rate_.size(); ++n) {
        const double lost = -std::expm1(-rate_[n] * dt);
        factors.decay[n] = 1.0 - lost;
        factors.gain[n] = lost / rate_[n];
    }
    finish(factors);
}

double ModeState::fall() const {
    return dot(factors_[chosen_].mean_lost);
}

void ModeState::step(double slope) {
    const Factors& factors = factors_[chosen_];
    const double* decay = factors.decay.data();
    const double* gain = factors.gain.data();
    double* excess = excess_.data();
    for (std::size_t n = 0; n < excess_.size(); ++n) {
        excess[n] = excess[n] * decay[n] + slope * gain[n];
    }
}

void ModeState::shift(double kelvins) {
    for (double& excess : excess_) {
        excess += kelvins;
    }
}

double ModeState::dot(const std::vector<double>& weights) const {
    const double* w = weights.data();
    const double* x = excess_.data();
    const std::size_t count = excess_.size();
    // Four sums, so that one addition need not wait for the last.
    double a = 0.0, b = 0.0, c = 0.0, d = 0.0;
    std::size_t n = 0;
    for (; n + 4 <= count; n += 4) {
        a += w[n] * x[n];
        b += w[n + 1] * x[n + 1];
        c += w[n + 2] * x[n + 2];
        d += w[n + 3] * x[n + 3];
    }
    for (; n < count; ++n) {
        a += w[n] * x[n];
    }
    return (a + b) + (c + d);
}

}  // namespace holdwater::heat
