// SPDX-License-Identifier: MIT
// Comparisons with a stated tolerance; doctest's own Approx is absolute near zero and is not used.
#pragma once

#include <algorithm>
#include <cmath>

namespace holdwater::support {

/// |a - b| <= tolerance, in the unit of both; false for NaN.
inline bool near_abs(double a, double b, double tolerance) {
    return std::abs(a - b) <= tolerance;
}

/// |a - b| <= tolerance * max(|a|, |b|); false for NaN.
inline bool near_rel(double a, double b, double tolerance) {
    return std::abs(a - b) <= tolerance * std::max(std::abs(a), std::abs(b));
}

}  // namespace holdwater::support
