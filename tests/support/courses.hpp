// SPDX-License-Identifier: MIT
// Courses of temperature in straight lines between given points.
#pragma once

#include "units/history.hpp"

#include <initializer_list>
#include <utility>

namespace holdwater::support {

/// Points as {h, C}.
inline units::History by_hours(std::initializer_list<std::pair<double, double>> points) {
    units::History history;
    for (const auto& [h, c] : points) {
        history.add(units::hours(h), units::celsius(c));
    }
    return history;
}

/// Points as {min, C}.
inline units::History by_minutes(std::initializer_list<std::pair<double, double>> points) {
    units::History history;
    for (const auto& [min, c] : points) {
        history.add(units::minutes(min), units::celsius(c));
    }
    return history;
}

}  // namespace holdwater::support
