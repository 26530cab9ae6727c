// SPDX-License-Identifier: MIT
// Laws of one direction: eigenvalues solve their equation, weights sum up, special cases are their closed forms.
#include "heat/body.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <stdexcept>

using namespace holdwater;
using heat::series;
using support::near_abs;
using support::near_rel;

namespace {
constexpr double exponents[] = {0.0, 0.28, 0.5, 1.0, 1.37, 1.9, 2.0};
constexpr double biots[] = {1e-4, 1e-2, 0.3, 1.0, 7.0, 40.0, 1e3, 1e6};
}  // namespace

TEST_CASE("eigenvalues of slab and ball solve their closed equations to 1e-12") {
    for (const double biot : biots) {
        CAPTURE(biot);
        for (const double z : series(0.0, biot, 40).zeta) {
            // zeta tan zeta = Bi, written so that rounding near the poles does not decide.
            const double turn = std::remainder(z - std::atan2(biot, z), std::numbers::pi);
            CHECK(near_abs(turn, 0.0, 1e-12 * z));
        }
        for (const double z : series(2.0, biot, 40).zeta) {
            const double turn = std::remainder(z - std::atan2(z, 1.0 - biot), std::numbers::pi);
            CHECK(near_abs(turn, 0.0, 1e-12 * z));
        }
    }
}

TEST_CASE("eigenvalues of the cylinder solve theirs") {
    for (const double biot : biots) {
        CAPTURE(biot);
        for (const double z : series(1.0, biot, 40).zeta) {
            // Relative to the slope of the equation in zeta: an error of zeta of 1e-12.
            const double f = z * std::cyl_bessel_j(1.0, z) - biot * std::cyl_bessel_j(0.0, z);
            const double slope = biot * std::cyl_bessel_j(1.0, z) + z * std::cyl_bessel_j(0.0, z);
            CHECK(near_abs(f / slope, 0.0, 2e-12 * z));
        }
    }
}

TEST_CASE("eigenvalues rise, are one in each stretch, and none is skipped for any exponent") {
    for (const double b : exponents) {
        for (const double biot : biots) {
            CAPTURE(b);
            CAPTURE(biot);
            const auto s = series(b, biot, 60);
            CHECK(s.zeta.front() > 0.0);
            CHECK(s.zeta.front() < std::numbers::pi + 1e-9);
            for (std::size_t n = 1; n < s.zeta.size(); ++n) {
                const double gap = s.zeta[n] - s.zeta[n - 1];
                CHECK(gap > 0.4 * std::numbers::pi);
                CHECK(gap < 1.6 * std::numbers::pi);
            }
        }
    }
}

TEST_CASE("fractional exponents close to slab, cylinder and ball meet their closed forms") {
    constexpr double near = 1e-7;
    for (const double biot : {0.1, 1.0, 10.0, 100.0}) {
        for (const double b : {0.0, 1.0, 2.0}) {
            CAPTURE(biot);
            CAPTURE(b);
            const auto closed = series(b, biot, 8);
            const auto bessel = series(b == 2.0 ? b - near : b + near, biot, 8);
            for (std::size_t n = 0; n < 8; ++n) {
                CHECK(near_rel(closed.zeta[n], bessel.zeta[n], 1e-6));
                CHECK(near_rel(closed.centre[n], bessel.centre[n], 1e-5));
                CHECK(near_rel(closed.surface[n], bessel.surface[n], 1e-5));
                CHECK(near_rel(closed.mean[n], bessel.mean[n], 1e-5));
            }
        }
    }
}

TEST_CASE("weights are those of the textbooks for slab, cylinder and ball") {
    for (const double biot : {0.2, 2.0, 20.0}) {
        CAPTURE(biot);
        const auto flat = series(0.0, biot, 6);
        const auto round = series(1.0, biot, 6);
        const auto ball = series(2.0, biot, 6);
        for (std::size_t n = 0; n < 6; ++n) {
            double z = flat.zeta[n];
            double c = 4 * std::sin(z) / (2 * z + std::sin(2 * z));
            CHECK(near_rel(flat.centre[n], c, 1e-10));
            CHECK(near_rel(flat.surface[n], c * std::cos(z), 1e-9));
            CHECK(near_rel(flat.mean[n], c * std::sin(z) / z, 1e-10));
            z = round.zeta[n];
            const double j0 = std::cyl_bessel_j(0.0, z);
            const double j1 = std::cyl_bessel_j(1.0, z);
            c = 2 / z * j1 / (j0 * j0 + j1 * j1);
            CHECK(near_rel(round.centre[n], c, 1e-9));
            CHECK(near_rel(round.surface[n], c * j0, 1e-8));
            CHECK(near_rel(round.mean[n], 2 * c * j1 / z, 1e-9));
            z = ball.zeta[n];
            c = 4 * (std::sin(z) - z * std::cos(z)) / (2 * z - std::sin(2 * z));
            CHECK(near_rel(ball.centre[n], c, 1e-10));
            CHECK(near_rel(ball.surface[n], c * std::sin(z) / z, 1e-9));
            CHECK(near_rel(ball.mean[n], 3 * c * (std::sin(z) - z * std::cos(z)) / (z * z * z), 1e-9));
        }
    }
}

TEST_CASE("mean weights are positive and sum to one") {
    for (const double b : exponents) {
        for (const double biot : {0.01, 1.0, 40.0}) {
            CAPTURE(b);
            CAPTURE(biot);
            double sum = 0.0;
            for (const double mean : series(b, biot, 400).mean) {
                CHECK(mean > 0.0);
                sum += mean;
            }
            CHECK(near_abs(sum, 1.0, 1e-5));
        }
    }
}

TEST_CASE("at the start nothing has moved: theta goes to one as time goes to nothing, everywhere inside") {
    for (const double b : exponents) {
        for (const double biot : {0.1, 5.0, 100.0}) {
            CAPTURE(b);
            CAPTURE(biot);
            for (const double r : {0.0, 0.25, 0.5, 0.75}) {
                CAPTURE(r);
                CHECK(near_abs(heat::theta_at(b, biot, 5e-4, r), 1.0, 1e-9));
            }
            CHECK(heat::theta_at(b, biot, 5e-4, 1.0) < 1.0);
            // While the face has hardly warmed the flux is h times the whole step: the mean moves as (b + 1) Bi Fo.
            const double moved = 1.0 - heat::theta_mean(b, 0.01, 1e-3);
            CHECK(near_rel(moved, (b + 1.0) * 0.01 * 1e-3, 0.002));
        }
    }
}

TEST_CASE("theta falls with time and from the centre to the face") {
    for (const double b : exponents) {
        double last = 1.0 + 1e-9;
        for (double fourier = 0.002; fourier < 3.0; fourier *= 1.3) {
            CAPTURE(b);
            CAPTURE(fourier);
            const double now = heat::theta_at(b, 8.0, fourier, 0.0);
            CHECK(now <= last + 1e-12);
            last = now;
            for (double r = 0.2; r <= 1.0; r += 0.2) {
                CHECK(heat::theta_at(b, 8.0, fourier, r) <= heat::theta_at(b, 8.0, fourier, r - 0.2) + 1e-12);
            }
        }
    }
}

TEST_CASE("the rounder, the faster") {
    for (double fourier = 0.05; fourier < 1.0; fourier *= 1.5) {
        double last = 1.0;
        for (const double b : exponents) {
            CAPTURE(fourier);
            CAPTURE(b);
            const double now = heat::theta_at(b, 10.0, fourier, 0.0);
            CHECK(now < last);
            last = now;
        }
    }
}

TEST_CASE("nonsense is refused as a fault of the caller") {
    CHECK_THROWS_AS(series(-0.1, 1.0, 1), std::invalid_argument);
    CHECK_THROWS_AS(series(2.1, 1.0, 1), std::invalid_argument);
    CHECK_THROWS_AS(series(0.0, 0.0, 1), std::invalid_argument);
    CHECK_THROWS_AS(series(0.0, std::nan(""), 1), std::invalid_argument);
    CHECK_THROWS_AS(series(0.0, 1.0, 0), std::invalid_argument);
}
