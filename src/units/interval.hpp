// SPDX-License-Identifier: MIT
// A quantity that is not known exactly.
#pragma once

#include "units/quantity.hpp"

#include <optional>
#include <utility>

namespace holdwater::units {

/// What lies between two values of a quantity: K between two temperatures, hours between two moments of a trip.
template <class Q>
struct DifferenceOf {
    using type = decltype(std::declval<Q>() - std::declval<Q>());
};
template <class Q>
struct DifferenceOf<std::optional<Q>> : DifferenceOf<Q> {};

/// A quantity known as a middle and the two ends between which it lies in 90 % of the scenarios. An optional quantity
/// is absent where it never comes about, which counts as later, and higher, than any value.
template <class Q>
struct Interval {
    Q low{};
    Q likely{};
    Q high{};
    typename DifferenceOf<Q>::type error{};  // of the three, from drawing scenarios at all; 0: not worked out
};

}  // namespace holdwater::units
