// SPDX-License-Identifier: MIT
// Lengths on a page: two types that no slip can exchange, and the one way between them.
#include "units/page_length.hpp"

#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <type_traits>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using units::Millimetres;
using units::Points;

namespace {

template <class A, class B>
concept Added = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Compared = requires(A a, B b) {
    a < b;
};

}  // namespace

TEST_CASE("points do not pass for millimetres, nor a bare figure for either") {
    static_assert(!std::is_constructible_v<Millimetres, Points> && !std::is_constructible_v<Points, Millimetres>);
    static_assert(!std::is_convertible_v<double, Millimetres> && !std::is_convertible_v<double, Points>);
    static_assert(!std::is_convertible_v<Millimetres, double> && !std::is_convertible_v<Points, double>);
    static_assert(Added<Millimetres, Millimetres> && !Added<Millimetres, Points> && !Added<Millimetres, double>);
    static_assert(Compared<Points, Points> && !Compared<Points, Millimetres> && !Compared<Points, double>);
    CHECK(std::is_same_v<decltype(1.0_mm / 1.0_mm), double>);
}

TEST_CASE("an inch is 25.4 mm and 72 points, there and back") {
    CHECK(support::near_abs(units::in_millimetres(72.0_pt), 25.4_mm, 1e-12));
    CHECK(support::near_abs(units::in_points(25.4_mm), 72.0_pt, 1e-12));
    for (const Points size : {0.4_pt, 7.5_pt, 10.0_pt, 44.0_pt}) {
        CHECK(support::near_abs(units::in_points(units::in_millimetres(size)), size, 1e-12));
    }
}

TEST_CASE("lengths add, scale and round as figures do") {
    Millimetres x = 2.5_mm;
    x += 1.0_mm;
    x *= 2.0;
    x -= 0.5_mm;
    CHECK(x == 6.5_mm);
    CHECK(floor(x) == 6.0_mm);
    CHECK(ceil(x) == 7.0_mm);
    CHECK(round(-0.4_mm) == 0.0_mm);
    CHECK(abs(-x) == x);
    CHECK(Millimetres{} == 0.0_mm);
    CHECK(3.0 * 0.5_pt == 1.5_pt);
    CHECK(13.0_mm / x == 2.0);
}
