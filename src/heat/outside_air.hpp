// SPDX-License-Identifier: MIT
// The air outside the box, asked for its mean over steps that follow one another. Inside heat/ only.
#pragma once

#include "units/history.hpp"

#include <cstddef>

namespace holdwater::heat {

class OutsideAir {
  public:
    /// Throws std::invalid_argument for a history without points: a bath is always somewhere.
    explicit OutsideAir(units::History history);

    /// Exact mean [C] of the piecewise linear history between two moments [s]; fast where each call starts at or after
    /// the last one's start.
    double mean(double from, double to);
    double at(double moment) const { return history_.at(units::Duration{moment}).celsius(); }

  private:
    double value_at(double t) const;  // on the segment that ends at next_

    units::History history_;
    std::size_t next_ = 0;  // first point after the moment asked last
};

}  // namespace holdwater::heat
