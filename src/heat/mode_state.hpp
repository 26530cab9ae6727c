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
    void choose(double dt, std::size_t rung) {
        chosen_ = rung;
        if (rung == step_lengths && other_dt_ != dt) {
            make_other(dt);
        }
    }
    /// In the chosen step the mean excess falls by `fall` and rises by `lag` for each K/s of the bath's slope.
    double fall() const { return dot(factors(chosen_) + 2 * count_); }
    double lag() const { return lag_[chosen_]; }
    /// x_n(dt) = x_n e^(-rate dt) + slope (1 - e^(-rate dt)) / rate, exact for a bath that is linear within the step.
    /// Returns the core excess after it.
    double step(double slope) {
        const double* decay = factors(chosen_);
        const double* gain = decay + count_;
        const double* core = column(core_at);
        double* excess = column(excess_at);
        std::array<double, lanes> sum{};
        for (std::size_t n = 0; n < count_; n += lanes) {
            for (std::size_t k = 0; k < lanes; ++k) {
                excess[n + k] = excess[n + k] * decay[n + k] + slope * gain[n + k];
                sum[k] += core[n + k] * excess[n + k];
            }
        }
        return total(sum);
    }
    /// The bath jumps by so many K.
    void shift(double kelvins);

    double core() const { return dot(column(core_at)); }
    double surface() const { return dot(column(surface_at)); }
    double mean() const { return dot(column(mean_at)); }
    double mean_at_once() const { return mean_at_once_; }

  private:
    // All numbers lie in one piece of memory, since scenarios are copied by the thousand: the columns below, then for
    // each step length the decay e^(-rate dt), the gain (1 - decay) / rate, and the mean lost, mean (1 - decay).
    enum Column : std::size_t { rate_at, core_at, surface_at, mean_at, excess_at, columns };

    const double* column(Column which) const { return numbers_.data() + which * count_; }
    double* column(Column which) { return numbers_.data() + which * count_; }
    const double* factors(std::size_t rung) const { return numbers_.data() + (columns + 3 * rung) * count_; }
    double* factors(std::size_t rung) { return numbers_.data() + (columns + 3 * rung) * count_; }
    void make_other(double dt);
    void finish(std::size_t rung);

    // Several sums side by side, so that one addition need not wait for the last and a processor may do them at once.
    static constexpr std::size_t lanes = 4;
    static double total(const std::array<double, lanes>& sum) { return (sum[0] + sum[1]) + (sum[2] + sum[3]); }
    double dot(const double* weights) const {
        const double* excess = column(excess_at);
        std::array<double, lanes> sum{};
        for (std::size_t n = 0; n < count_; n += lanes) {
            for (std::size_t k = 0; k < lanes; ++k) {
                sum[k] += weights[n + k] * excess[n + k];
            }
        }
        return total(sum);
    }

    std::size_t count_;  // of modes, filled up with ones of no weight to whole lanes
    std::vector<double> numbers_;
    double mean_at_once_ = 0.0;
    std::array<double, step_lengths + 1> lag_{};  // sum of mean times gain
    double other_dt_ = 0.0;
    std::size_t chosen_ = 0;
};

}  // namespace holdwater::heat
