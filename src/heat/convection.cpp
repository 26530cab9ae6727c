// SPDX-License-Identifier: MIT
#include "heat/convection.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdwater::heat {
namespace {

struct WaterRow {
    double celsius;
    double density;       // kg/m3
    double conductivity;  // W/(m K)
    double viscosity;     // mPa s
    double prandtl;
    double expansion;  // 1e-4/K
};

// Liquid water at 1 atm, computed from iapws-if97 and its companion formulations (their verification values are in
// tests/reference/heat/water.cpp). Linear between rows; outside 4 to 99.9 C the nearest row.
constexpr std::array<WaterRow, 16> water_rows = {{
    {4, 999.98, 0.566, 1.567, 11.66, 0.006},
    {10, 999.70, 0.579, 1.306, 9.47, 0.88},
    {20, 998.21, 0.598, 1.002, 7.01, 2.07},
    {30, 995.65, 0.614, 0.797, 5.42, 3.03},
    {40, 992.22, 0.629, 0.653, 4.34, 3.85},
    {50, 988.05, 0.641, 0.547, 3.57, 4.57},
    {55, 985.71, 0.646, 0.504, 3.26, 4.91},
    {60, 983.21, 0.651, 0.466, 2.99, 5.23},
    {65, 980.57, 0.656, 0.433, 2.76, 5.54},
    {70, 977.78, 0.660, 0.404, 2.56, 5.84},
    {75, 974.86, 0.664, 0.377, 2.38, 6.13},
    {80, 971.80, 0.667, 0.354, 2.23, 6.42},
    {85, 968.62, 0.670, 0.333, 2.09, 6.70},
    {90, 965.32, 0.673, 0.314, 1.96, 6.97},
    {95, 961.90, 0.675, 0.297, 1.85, 7.24},
    {99.9, 958.43, 0.677, 0.282, 1.76, 7.50},
}};

WaterRow water_at(double celsius) {
    const double t = std::clamp(celsius, water_rows.front().celsius, water_rows.back().celsius);
    std::size_t i = 1;
    while (i + 1 < water_rows.size() && t > water_rows[i].celsius) {
        ++i;
    }
    const WaterRow& a = water_rows[i - 1];
    const WaterRow& b = water_rows[i];
    const double share = (t - a.celsius) / (b.celsius - a.celsius);
    return {t,
            std::lerp(a.density, b.density, share),
            std::lerp(a.conductivity, b.conductivity, share),
            std::lerp(a.viscosity, b.viscosity, share),
            std::lerp(a.prandtl, b.prandtl, share),
            std::lerp(a.expansion, b.expansion, share)};
}

}  // namespace

double nusselt_vertical_plate(double rayleigh, double prandtl) {
    // Returns Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))^2.
    // Source: churchill-chu-1975, vertical plate, all Ra. Valid 0.1 < Ra < 1e12; not checked.
    const double root = 0.825 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) /
                                    std::pow(1.0 + std::pow(0.492 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
    return root * root;
}

double nusselt_laminar_plate(double rayleigh, double prandtl) {
    // Returns Nu = 0.68 + 0.670 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9).
    // Source: churchill-chu-1975, laminar vertical plate (lienhard-ahtt Ex 8.3, incropera-fhmt Eq. 9.27). Valid
    // Ra < 1e9; not checked.
    return 0.68 + 0.670 * std::pow(rayleigh, 0.25) / std::pow(1.0 + std::pow(0.492 / prandtl, 9.0 / 16.0), 4.0 / 9.0);
}

double nusselt_horizontal_cylinder(double rayleigh, double prandtl) {
    // Returns Nu = (0.60 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2.
    // Source: churchill-chu-1975, horizontal cylinder. Valid 1e-5 < Ra < 1e12; not checked.
    const double root = 0.60 + 0.387 * std::pow(rayleigh, 1.0 / 6.0) /
                                   std::pow(1.0 + std::pow(0.559 / prandtl, 9.0 / 16.0), 8.0 / 27.0);
    return root * root;
}

units::FilmCoefficient film_of_still_water(Hanging how, units::Length size, units::Temperature water,
                                           units::TemperatureDifference difference) {
    // Returns h = Nu k / L with Ra = g beta dT L^3 / (nu alpha), alpha = nu / Pr, water's properties at the mean of
    // water and surface (the surface is the cooler). Source: churchill-chu-1975. Valid 5 to 95 C mean; outside it the
    // properties of the nearer end are taken.
    constexpr double gravity = 9.80665;
    constexpr double least_difference = 0.01;
    const double dt = std::max(std::abs(difference.si()), least_difference);
    const WaterRow w = water_at(water.celsius() - 0.5 * dt);
    const double nu = w.viscosity * 1e-3 / w.density;
    const double length = size.si();
    const double rayleigh = gravity * w.expansion * 1e-4 * dt * length * length * length / (nu * nu / w.prandtl);
    const double nusselt = how == Hanging::upright_slab ? nusselt_vertical_plate(rayleigh, w.prandtl)
                                                        : nusselt_horizontal_cylinder(rayleigh, w.prandtl);
    return units::FilmCoefficient{nusselt * w.conductivity / length};
}

}  // namespace holdwater::heat
