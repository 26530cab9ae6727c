// SPDX-License-Identifier: MIT
// Natural convection against worked examples of textbooks and the table recomputed for the project.
#include "heat/convection.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace holdwater;
using support::near_abs;
using support::near_rel;

TEST_CASE("glass fire screen, incropera-fhmt Ex 9.2, read") {
    const double rayleigh = 9.8 * 0.0025 * 209 * std::pow(0.71, 3) / (26.4e-6 * 38.3e-6);
    CHECK(near_rel(rayleigh, 1.81e9, 0.005));
    const double nusselt = heat::nusselt_vertical_plate(1.813e9, 0.69);
    CHECK(near_rel(nusselt, 147.16, 0.002));
    const double h = nusselt * 0.0338 / 0.71;
    CHECK(near_abs(h, 7.0, 0.05));
    CHECK(near_rel(h * 1.02 * 0.71 * 209, 1060, 0.01));
}

TEST_CASE("horizontal pipe, incropera-fhmt Ex 9.4, read: convection of 322 W/m") {
    const double rayleigh = 9.8 * 2.725e-3 * 142 * 1e-3 / (22.8e-6 * 32.8e-6);
    const double h = heat::nusselt_horizontal_cylinder(rayleigh, 0.697) * 0.0313 / 0.1;
    const double per_metre = h * 3.14159265 * 0.1 * 142;
    CHECK(near_abs(per_metre, 322.5, 0.5));
    CHECK(near_rel(per_metre, 322, 0.01));
}

TEST_CASE("pipe of 80 mm in 20 C air, cengel-hmt Ex 9-1") {
    const double nu = 1.750e-5;
    const double rayleigh = 9.81 / 318.15 * 50 * std::pow(0.08, 3) / (nu * nu) * 0.7241;
    CHECK(near_rel(rayleigh, 1.87e6, 0.005));
    const double nusselt = heat::nusselt_horizontal_cylinder(rayleigh, 0.7241);
    CHECK(near_abs(nusselt, 17.4, 0.05));
    const double h = nusselt * 0.02699 / 0.08;
    CHECK(near_abs(h, 5.87, 0.01));
    CHECK(near_rel(h * 3.14159265 * 0.08 * 6 * 50, 442.5, 0.01));  // the book's 442 to 443 W, from memory
}

TEST_CASE("laminar and general form of the vertical plate agree within their stated scatter") {
    for (const double rayleigh : {1e5, 1e6, 1e7, 1e8}) {
        CAPTURE(rayleigh);
        CHECK(near_rel(heat::nusselt_laminar_plate(rayleigh, 3.0), heat::nusselt_vertical_plate(rayleigh, 3.0), 0.20));
    }
}

TEST_CASE("film around food in 60 C water, recomputed for the project") {
    const struct {
        double difference;
        std::array<double, 3> round;    // D 25, 50, 100 mm
        std::array<double, 3> upright;  // H 50, 100, 200 mm
    } rows[] = {{0.5, {368, 334, 312}, {368, 336, 313}}, {2, {543, 502, 474}, {545, 505, 478}},
                {5, {702, 656, 624}, {705, 659, 628}},   {10, {845, 794, 759}, {849, 799, 765}},
                {20, {997, 941, 903}, {1001, 947, 910}}, {40, {1110, 1052, 1012}, {1115, 1058, 1019}}};
    // Whole W/m2/K are printed; between the rows of the water table properties are linear here, 1 %.
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < 3; ++i) {
            CAPTURE(row.difference);
            CAPTURE(i);
            const double size = 25.0 * std::pow(2.0, static_cast<double>(i));
            const auto film = [&](heat::Hanging how, double millimetres) {
                return heat::film_of_still_water(how, units::millimetres(millimetres), units::celsius(60),
                                                 units::kelvins(row.difference))
                    .si();
            };
            CHECK(near_rel(film(heat::Hanging::lying_round, size), row.round[i], 0.01));
            CHECK(near_rel(film(heat::Hanging::upright_slab, 2 * size), row.upright[i], 0.01));
        }
    }
}
