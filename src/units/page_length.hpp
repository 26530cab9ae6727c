// SPDX-License-Identifier: MIT
// Lengths on a page: type and rules are set in points and placed in millimetres. As two types, neither passes for the
// other, and in_millimetres() and in_points() are the only ways between them.
#pragma once

#include <cmath>
#include <compare>

namespace holdwater::units {

template <class Unit>
class PageLength {
  public:
    constexpr PageLength() = default;
    constexpr explicit PageLength(double value) : value_(value) {}
    constexpr double value() const { return value_; }  // in the unit that the type names

    constexpr PageLength operator-() const { return PageLength{-value_}; }
    constexpr PageLength& operator+=(PageLength other) { return *this = *this + other; }
    constexpr PageLength& operator-=(PageLength other) { return *this = *this - other; }
    constexpr PageLength& operator*=(double factor) { return *this = *this * factor; }
    friend constexpr PageLength operator+(PageLength a, PageLength b) { return PageLength{a.value_ + b.value_}; }
    friend constexpr PageLength operator-(PageLength a, PageLength b) { return PageLength{a.value_ - b.value_}; }
    friend constexpr PageLength operator*(PageLength a, double factor) { return PageLength{a.value_ * factor}; }
    friend constexpr PageLength operator*(double factor, PageLength a) { return PageLength{factor * a.value_}; }
    friend constexpr PageLength operator/(PageLength a, double divisor) { return PageLength{a.value_ / divisor}; }
    friend constexpr double operator/(PageLength a, PageLength b) { return a.value_ / b.value_; }
    friend constexpr auto operator<=>(PageLength a, PageLength b) = default;

    friend PageLength abs(PageLength a) { return PageLength{std::abs(a.value_)}; }
    /// To whole units.
    friend PageLength floor(PageLength a) { return PageLength{std::floor(a.value_)}; }
    friend PageLength ceil(PageLength a) { return PageLength{std::ceil(a.value_)}; }
    friend PageLength round(PageLength a) { return PageLength{std::round(a.value_)}; }

  private:
    double value_ = 0.0;
};

using Millimetres = PageLength<struct MillimetreTag>;
using Points = PageLength<struct PointTag>;  // 1/72 in

inline constexpr Millimetres inch{25.4};  // by definition
inline constexpr double points_per_inch = 72.0;

constexpr Millimetres in_millimetres(Points size) {
    return size.value() * (inch / points_per_inch);
}
constexpr Points in_points(Millimetres length) {
    return Points{length / (inch / points_per_inch)};
}

/// 2.5_mm, 0.4_pt.
namespace page_literals {
constexpr Millimetres operator""_mm(long double value) {
    return Millimetres{static_cast<double>(value)};
}
constexpr Points operator""_pt(long double value) {
    return Points{static_cast<double>(value)};
}
}  // namespace page_literals

}  // namespace holdwater::units
