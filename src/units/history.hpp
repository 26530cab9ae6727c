// SPDX-License-Identifier: MIT
// A temperature as it ran over time, computed or logged: what kill, clocks and growth look at.
#pragma once

#include "units/quantity.hpp"

#include <optional>
#include <vector>

namespace holdwater::units {

/// Points in time order, linear between them, constant outside. Two points at one moment are a jump.
struct History {
    struct Point {
        Duration at;  // since the start of the history
        Temperature value;
    };
    std::vector<Point> points;

    bool empty() const { return points.empty(); }
    void add(Duration at, Temperature value) { points.push_back({at, value}); }
    /// Needs at least one point; at a jump, the value after it.
    Temperature at(Duration t) const;
    Temperature highest() const;
    Temperature lowest(Duration from, Duration to) const;
    /// First moment at or after `from` at which the value is at or above `level`; nothing if never.
    std::optional<Duration> first_at_or_above(Temperature level, Duration from = Duration{0}) const;
    /// Total time spent below `level` between two moments.
    Duration time_below(Temperature level, Duration from, Duration to) const;
};

}  // namespace holdwater::units
