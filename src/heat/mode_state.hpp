// SPDX-License-Identifier: MIT
// The modes of one food while it lies in a bath: their excesses and how they answer one step. Inside heat/ only.
#pragma once

#include "heat/body.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace holdwater::heat {

/// Step lengths double from the shortest to the longest [s]; only they have ready-made decay factors.
inline constexpr std::size_t step_lengths = 7;
inline constexpr double longest_step = 300.0;
constexpr double step_length(std::size_t rung) {
    double length = longest_step;
    for (std::size_t i = rung; i + 1 < step_lengths; ++i) {
        length /= 2.0;
    }
    return length;
}

class ModeState {
  public:
    explicit ModeState(const Modes& modes);

    /// Makes ready for a step of this length; `rung` names a ready-made one, or is `step_lengths` for any other.
    void choose(double dt, std::size_t rung);
    /// In the chosen step the mean excess falls by `fall` and rises by `lag` for each K/s of the bath's slope.
    double fall() const;
    double lag() const { return factors_[chosen_].lag; }
    /// x_n(dt) = x_n e^(-rate dt) + slope (1 - e^(-rate dt)) / rate, exact for a bath that is linear within the step.
    void step(double slope);
    /// The bath jumps by so many K.
    void shift(double kelvins);

    double core() const { return dot(core_); }
    double surface() const { return dot(surface_); }
    double mean() const { return dot(mean_); }
    double mean_at_once() const { return mean_at_once_; }

  private:
    struct Factors {
        double dt = 0.0;
        std::vector<double> decay;      // e^(-rate dt)
        std::vector<double> gain;       // (1 - decay) / rate
        std::vector<double> mean_lost;  // mean (1 - decay)
        double lag = 0.0;               // sum of mean times gain
    };
    void finish(Factors& factors) const;
    double dot(const std::vector<double>& weights) const;

    std::vector<double> rate_;
    std::vector<double> core_;
    std::vector<double> surface_;
    std::vector<double> mean_;
    double mean_at_once_ = 0.0;
    std::vector<double> excess_;
    std::array<Factors, step_lengths + 1> factors_;
    std::size_t chosen_ = 0;
};

}  // namespace holdwater::heat
