// SPDX-License-Identifier: MIT
// The modes of one food whose bath is given: their excesses and how they answer it. Inside heat/ only.
#pragma once

#include "heat/body.hpp"

#include <array>
#include <cstddef>
#include <vector>

namespace holdwater::heat {

class ModeState {
  public:
    explicit ModeState(const Modes& modes);

    /// Steps by dt [s] > 0 while the bath rises by `slope` [K/s]:
    /// x_n(dt) = x_n e^(-rate dt) + slope (1 - e^(-rate dt)) / rate, exact for a bath that is linear within the step.
    void step(double dt, double slope);
    /// The bath jumps by so many K.
    void shift(double kelvins);

    double core() const { return dot(column(core_at)); }
    double mean() const { return dot(column(mean_at)); }

  private:
    enum Column : std::size_t { rate_at, core_at, mean_at, excess_at, decay_at, gain_at, columns };

    const double* column(Column which) const { return numbers_.data() + which * count_; }
    double* column(Column which) { return numbers_.data() + which * count_; }
    void make_factors(double dt);

    // Several sums side by side, so that one addition need not wait for the last and a processor may do them at once.
    static constexpr std::size_t at_once = 4;
    double dot(const double* weights) const {
        const double* excess = column(excess_at);
        std::array<double, at_once> sum{};
        for (std::size_t n = 0; n < count_; n += at_once) {
            for (std::size_t k = 0; k < at_once; ++k) {
                sum[k] += weights[n + k] * excess[n + k];
            }
        }
        return (sum[0] + sum[1]) + (sum[2] + sum[3]);
    }

    std::size_t count_;  // of modes, filled up with ones of no weight
    std::vector<double> numbers_;
    double made_for_ = 0.0;  // s, of decay and gain
};

}  // namespace holdwater::heat
