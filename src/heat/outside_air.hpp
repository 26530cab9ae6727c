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
    double mean(double from, double to);
    double at(double moment) const;

  private:
    struct Point {
        double at;     // s
        double value;  // C
        double slope;  // K/s until the next point
    };
    double value_at(double t) const;  // on the segment that ends at next_

    std::shared_ptr<const std::vector<Point>> points_;  // shared by all who stand in this air, more or less warm
    double warmer_ = 0.0;
    std::size_t next_ = 0;  // first point after the moment asked last
};

}  // namespace holdwater::heat
