// SPDX-License-Identifier: MIT
// Comparisons of lengths on a page with a stated tolerance.
#pragma once

#include "support/near.hpp"
#include "units/page_length.hpp"

namespace holdwater::support {

/// |a - b| <= tolerance, which is in the unit of both; false for NaN.
template <class Unit>
bool near_abs(units::PageLength<Unit> a, units::PageLength<Unit> b, double tolerance) {
    return near_abs(a.value(), b.value(), tolerance);
}

}  // namespace holdwater::support
