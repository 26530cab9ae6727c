// SPDX-License-Identifier: MIT
#include "heat/water.hpp"

#include "facts/kept.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdwater::heat {

problem::Result<units::Pressure> standard_pressure(units::Length altitude) {
    // Returns p [Pa] = p0 (1 - L H / T0)^(g0 M / (R* L)), with H = r Z / (r + Z) the geopotential altitude [m],
    // Z the geometric altitude [m], p0 101 325 Pa, T0 288.15 K, L 0.0065 K/m, g0 9.80665 m/s2, M 0.0289644 kg/mol,
    // R* 8.31432 J/(mol K), r 6 356 766 m.
    // Source: us-std-atm-1976, equations for the layer below 11 km. Valid -500 to 11 000 m; outside it is refused.
    constexpr double lowest = -500.0;
    constexpr double highest = 11000.0;
    const double z = altitude.si();
    if (!(z >= lowest && z <= highest)) {
        return problem::error("altitude-out-of-range", fmt::format("an altitude of {:.0f} m cannot be worked with", z),
                              "between -500 m and 11000 m");
    }
    constexpr double p0 = 101325.0;
    constexpr double t0 = 288.15;
    constexpr double lapse = 0.0065;
    constexpr double exponent = 9.80665 * 0.0289644 / (8.31432 * lapse);
    constexpr double radius = 6356766.0;
    const double h = radius * z / (radius + z);
    return units::Pressure{p0 * std::pow(1.0 - lapse * h / t0, exponent)};
}

problem::Result<units::Temperature> boiling_point(units::Pressure pressure) {
    // Returns the saturation temperature [K -> C] by the backward equation; pressure in MPa, temperature in K.
    // Source: iapws-if97, Eq. 31 with the coefficients of Table 34. Valid 611.213 Pa to 22.064 MPa; outside it is
    // refused.
    constexpr std::array<double, 10> n = {
        0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
        0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6,  -0.23855557567849,  0.65017534844798e3};
    constexpr double lowest = 611.213;
    constexpr double highest = 22.064e6;
    if (!(pressure.si() >= lowest && pressure.si() <= highest)) {
        return problem::error("pressure-out-of-range",
                              fmt::format("at a pressure of {:.0f} Pa water has no boiling point", pressure.si()),
                              "between 611.213 Pa and 22.064 MPa; an open pot on land sees 47000 to 108000 Pa");
    }
    const double beta = std::pow(pressure.si() * 1e-6, 0.25);
    const double e = beta * beta + n[2] * beta + n[5];
    const double f = n[0] * beta * beta + n[3] * beta + n[6];
    const double g = n[1] * beta * beta + n[4] * beta + n[7];
    const double d = 2.0 * g / (-f - std::sqrt(f * f - 4.0 * e * g));
    const double sum = n[9] + d;
    const double kelvin = 0.5 * (sum - std::sqrt(sum * sum - 4.0 * (n[8] + n[9] * d)));
    return units::Temperature{kelvin - 273.15};
}

problem::Result<units::Temperature> boiling_point_at(units::Length altitude) {
    const auto pressure = standard_pressure(altitude);
    if (!pressure) {
        return pressure.problems();
    }
    return boiling_point(*pressure);
}

units::Density water_density(units::Temperature t) {
    // Returns rho [kg/m3] of liquid water at 1 atm, t in C.
    // Source: kell-1975, coefficients from memory, agreeing with IAPWS-IF97 to 0.02 kg/m3. Valid 0 to 100 C;
    // outside it the value at the nearer end is taken.
    const double c = std::clamp(t.celsius(), 0.0, 100.0);
    const double above =
        999.83952 +
        c * (16.945176 + c * (-7.9870401e-3 + c * (-4.6170461e-5 + c * (1.0556302e-7 + c * -2.8054253e-10))));
    return units::Density{above / (1.0 + 1.6879850e-2 * c)};
}

units::SpecificHeat water_specific_heat() {
    return facts::kept(
        [](const facts::Facts& facts) { return units::SpecificHeat{facts.value("water.specific-heat")}; });
}

}  // namespace holdwater::heat
