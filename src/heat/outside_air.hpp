// SPDX-License-Identifier: MIT
// The air outside the box, asked for its mean over steps that follow one another.
#pragma once

#include "units/history.hpp"

#include <cstddef>
#include <memory>
#include <vector>

namespace holdwater::heat {

class OutsideAir {
  public:
    /// Throws std::invalid_argument for a history without points: a bath is always somewhere.
    OutsideAir(const units::History& history);  // NOLINT(google-explicit-constructor): a history is air
    /// The same air, so much warmer throughout.
    OutsideAir warmer_by(double kelvins) const;

    /// Exact mean [C] of the piecewise linear history between two moments [s]; fast where each call starts at or after
    /// the last one's start.
    double mean(double from, double to) {
        if (from >= since_ && to <= until_) {
            return value_at(0.5 * (from + to)) + warmer_;  // nearly always: on the segment of the last call
        }
        return mean_over(from, to);
    }
    double at(double moment) const;

  private:
    struct Point {
        double at;     // s
        double value;  // C
        double slope;  // K/s until the next point
    };
    double mean_over(double from, double to);
    void take_segment(std::size_t next);  // the one that ends at this point
    double value_at(double t) const { return here_.value + here_.slope * (t - here_.at); }  // on that segment

    std::shared_ptr<const std::vector<Point>> points_;  // shared by all who stand in this air, more or less warm
    double warmer_ = 0.0;
    Point here_{};        // where the segment asked last begins
    double since_ = 0.0;  // s, and from when to when it lasts
    double until_ = 0.0;
};

}  // namespace holdwater::heat
