// SPDX-License-Identifier: MIT
// Water and atmosphere against the verification values of their standards.
#include "heat/water.hpp"

#include "support/accuracy.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using support::near_abs;
using support::near_rel;

TEST_CASE("saturation temperature, IAPWS-IF97 Table 36, read in a copy: nine printed digits") {
    const struct { double megapascal, kelvin; } rows[] = {{0.1, 372.755919}, {1, 453.035632}, {10, 584.149488}};
    support::Worst worst;
    for (const auto& row : rows) {
        CAPTURE(row.megapascal);
        const auto t = heat::boiling_point(units::Pressure{row.megapascal * 1e6});
        REQUIRE(t.ok());
        CHECK(near_abs(t->kelvin(), row.kelvin, 5e-7));
        worst.take(t->kelvin(), row.kelvin);
    }
    support::record_accuracy("2-saturation", "boiling temperature of water at 0.1, 1 and 10 MPa",
                             "verification values of IAPWS-IF97, nine digits", support::at_most(worst.value(), "K"));
}

TEST_CASE("saturation pressure, IAPWS-IF97 Table 35, read in a copy: the backward equation inverts it") {
    const struct { double kelvin, megapascal; } rows[] = {{300, 0.353658941e-2}, {500, 2.63889776}, {600, 12.3443146}};
    for (const auto& row : rows) {
        CAPTURE(row.kelvin);
        const auto t = heat::boiling_point(units::Pressure{row.megapascal * 1e6});
        REQUIRE(t.ok());
        CHECK(near_abs(t->kelvin(), row.kelvin, 2e-6));  // nine digits of pressure
    }
}

TEST_CASE("boiling point at one atmosphere, computed for the project") {
    const auto t = heat::boiling_point(units::Pressure{101325});
    REQUIRE(t.ok());
    CHECK(near_abs(t->kelvin(), 373.1243, 0.00005));
    CHECK(near_abs(t->celsius(), 99.974, 0.0005));
}

TEST_CASE("standard atmosphere against its published pressures, us-std-atm-1976") {
    // 0, 2000, 4000, 6000 m read; the others from memory. Five printed digits.
    const struct {
        double metres, pascal, tolerance;
    } rows[] = {{0, 101320, 5.01},   {2000, 79501, 0.5}, {4000, 61660, 0.5}, {6000, 47218, 0.5},
                {1000, 89876, 0.51}, {3000, 70121, 0.5}, {5000, 54048, 0.5}};
    support::Worst worst;
    for (const auto& row : rows) {
        CAPTURE(row.metres);
        const auto p = heat::standard_pressure(units::metres(row.metres));
        REQUIRE(p.ok());
        CHECK(near_abs(p->si(), row.pascal, row.tolerance));
        if (row.metres > 0.0) {  // sea level is printed to 10 Pa only
            worst.take(p->si(), row.pascal);
        }
    }
    support::record_accuracy("2-standard-atmosphere", "air pressure from 1,000 to 6,000 m",
                             "1976 standard atmosphere, whole pascals", support::at_most(worst.value(), "Pa"));
}

TEST_CASE("boiling point by altitude, computed for the project from both standards") {
    const struct {
        double metres, pascal, celsius;
    } rows[] = {{0, 101325, 99.97},   {500, 95461, 98.31},  {1000, 89876, 96.65}, {1500, 84560, 94.98},
                {2000, 79501, 93.32}, {2500, 74692, 91.65}, {3000, 70121, 89.98}, {3500, 65780, 88.30},
                {4000, 61660, 86.63}, {4500, 57753, 84.95}, {5000, 54048, 83.27}};
    for (const auto& row : rows) {
        CAPTURE(row.metres);
        const auto p = heat::standard_pressure(units::metres(row.metres));
        const auto t = heat::boiling_point_at(units::metres(row.metres));
        REQUIRE(p.ok());
        REQUIRE(t.ok());
        CHECK(near_abs(p->si(), row.pascal, 0.51));
        CHECK(near_abs(t->celsius(), row.celsius, 0.0051));
    }
}

TEST_CASE("density of water at 1 atm against IAPWS-IF97") {
    const struct {
        double celsius, density;
    } rows[] = {{4, 999.98},  {10, 999.70}, {20, 998.21}, {30, 995.65},  {40, 992.22}, {50, 988.05},
                {55, 985.71}, {60, 983.21}, {65, 980.57}, {70, 977.78},  {75, 974.86}, {80, 971.80},
                {85, 968.62}, {90, 965.32}, {95, 961.90}, {99.9, 958.43}};
    support::Worst worst;
    for (const auto& row : rows) {
        CAPTURE(row.celsius);
        const double density = heat::water_density(units::celsius(row.celsius)).si();
        CHECK(near_abs(density, row.density, 0.02 + 0.005));
        worst.take(density, row.density);
    }
    support::record_accuracy("2-water-density", "density of water, 4 to 99.9 C", "IAPWS-IF97",
                             support::at_most(worst.value(), "kg/m3"));
    // IAPWS SR6-08, liquid at 0.1 MPa and 298.15 K, read in a copy.
    CHECK(near_abs(heat::water_density(units::celsius(25)).si(), 997.047013, 0.02));
    // 2.5 % between a litre measured boiling and one measured at 60 C.
    const double ratio = heat::water_density(units::celsius(99.97)).si() / heat::water_density(units::celsius(60)).si();
    CHECK(near_abs(1.0 - ratio, 0.025, 0.0005));
}

TEST_CASE("specific heat used in balances is the mean of IAPWS-IF97 from 0 to 100 C") {
    // Enthalpy from 4 to 95 C in the steam tables is 4.19 kJ/(kg K) on the mean to three digits.
    CHECK(near_rel(heat::water_specific_heat().si(), 4187.0, 0.002));
}

TEST_CASE("altitudes and pressures outside the standards are refused") {
    for (const double metres : {-501.0, 11001.0, std::nan("")}) {
        CAPTURE(metres);
        const auto p = heat::standard_pressure(units::metres(metres));
        REQUIRE_FALSE(p.ok());
        CHECK(p.problems().front().code == problem::Code("altitude-out-of-range"));
        CHECK_FALSE(heat::boiling_point_at(units::metres(metres)).ok());
    }
    CHECK(heat::standard_pressure(units::metres(-500)).ok());
    CHECK(heat::standard_pressure(units::metres(11000)).ok());
    for (const double pascal : {0.0, 611.2, 22.07e6, -5.0}) {
        CAPTURE(pascal);
        const auto t = heat::boiling_point(units::Pressure{pascal});
        REQUIRE_FALSE(t.ok());
        CHECK(t.problems().front().code == problem::Code("pressure-out-of-range"));
    }
}
