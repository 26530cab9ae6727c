// SPDX-License-Identifier: MIT
// Worked examples of textbooks, W1 to W14 of the heat reference. Each is held against the exact series as recomputed
// for the project (to its printed digits) and against the book's own answer, within 2 K or 3 % where the book read a
// chart or stopped at one term. W4 and W11 are known disagreements: there the test pins that we do NOT agree.
#include "heat/body.hpp"
#include "support/accuracy.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <functional>

using namespace holdwater;
using heat::theta_at;
using support::near_abs;
using support::near_rel;

namespace {

constexpr double slab = 0.0;
constexpr double cylinder = 1.0;
constexpr double ball = 2.0;

/// The x in [low, high] at which a falling function crosses zero.
double root(const std::function<double(double)>& falling, double low, double high) {
    for (int i = 0; i < 80; ++i) {
        const double middle = 0.5 * (low + high);
        (falling(middle) > 0.0 ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

struct Step {
    double b;
    double half;  // m
    double film;
    double k;
    double alpha;
    double start;
    double outside;
    double biot() const { return film * half / k; }
    double fourier(double t) const { return alpha * t / (half * half); }
    double at(double t, double r) const { return outside + (start - outside) * theta_at(b, biot(), fourier(t), r); }
    double time_to(double target, double r) const {
        const double share = (target - outside) / (start - outside);
        return root([&](double t) { return theta_at(b, biot(), fourier(t), r) - share; }, 1.0, 100000.0);
    }
};

}  // namespace

TEST_CASE("W1 boiled egg, cengel-hmt Ex 4-3, read") {
    const Step egg{ball, 0.025, 1200, 0.627, 0.151e-6, 5, 95};
    const double minutes = egg.time_to(70, 0) / 60;
    CHECK(near_abs(egg.biot(), 47.85, 0.005));
    CHECK(near_abs(minutes, 14.36, 0.005));
    CHECK(near_rel(minutes, 14.4, 0.03));
}

TEST_CASE("W2 egg of 5.5 cm, cengel-hmt problem, inputs read, answer from memory") {
    const Step egg{ball, 0.0275, 1400, 0.6, 0.14e-6, 8, 97};
    const heat::Series s = heat::series(ball, egg.biot(), 1);
    CHECK(near_abs(s.zeta[0], 3.0927, 0.00005));
    CHECK(near_abs(s.centre[0], 1.9977, 0.00005));
    const double minutes = egg.time_to(70, 0) / 60;
    CHECK(near_abs(minutes, 17.7, 0.05));
    CHECK(near_rel(minutes, 17.8, 0.03));
}

TEST_CASE("W3 variant of W2, read") {
    const Step egg{ball, 0.0275, 800, 0.607, 0.146e-6, 4.3, 100};
    const heat::Series s = heat::series(ball, egg.biot(), 1);
    CHECK(near_abs(s.zeta[0], 3.0551, 0.00005));
    CHECK(near_abs(s.centre[0], 1.9929, 0.00005));
    const double t = egg.time_to(74, 0);
    CHECK(near_abs(egg.fourier(t), 0.2132, 0.00005));
    CHECK(near_abs(t / 60, 18.4, 0.05));
    CHECK(near_rel(s.zeta[0], 3.06632, 0.005));  // the copy's interpolated value is slightly off
}

TEST_CASE("W4 sausage, cengel-hmt-5 problem 4-156: known disagreement with a third-party solution sheet") {
    const Step sausage{cylinder, 0.010, 600, 0.76, 2e-7, 5, 100};
    const heat::Series s = heat::series(cylinder, sausage.biot(), 1);
    CHECK(near_abs(sausage.biot(), 7.895, 0.0005));
    CHECK(near_abs(s.zeta[0], 2.1253, 0.00005));
    CHECK(near_abs(s.centre[0], 1.5515, 0.00005));
    const double infinite = sausage.time_to(80, 0);
    CHECK(near_abs(infinite, 221.0, 0.5));
    const double finite = root(
        [&](double t) {
            return sausage.fourier(t) > 0 ? theta_at(cylinder, 7.895, sausage.fourier(t), 0) *
                                                    theta_at(slab, 600 * 0.06 / 0.76, 2e-7 * t / 0.0036, 0) -
                                                20.0 / 95.0
                                          : 1.0;
        },
        1, 1000);
    CHECK(near_abs(finite, infinite, 0.1));
    CHECK_FALSE(near_rel(infinite, 208.0, 0.03));  // the sheet's 208 s is not the solution of its own inputs
}

TEST_CASE("W5 steaks cooled, cengel-thermal-fluid 11-44, read") {
    const Step steak{slab, 0.010, 9, 0.45, 0.91e-7, 25, -11};
    const double t = steak.time_to(2, 1);
    CHECK(near_abs(t, 5586, 0.5 + 10));  // alpha is given to two digits and Fo to four: 5585 to 5587 s by one term
    CHECK(near_rel(t, 5590, 0.03));
    CHECK(near_rel(t / 60, 93.1, 0.03));
}

TEST_CASE("W6 steak, cengel-hmt Ex 4-11, read: film for which the surface is 2 C while the centre is 8 C") {
    const double h = root(
        [](double film) {
            const Step steak{slab, 0.015, film, 0.45, 9.03e-8, 25, -15};
            const double t = steak.time_to(8, 0);
            return steak.at(t, 1) - 2.0;
        },
        5, 60);
    CHECK(near_abs(h, 20.2, 0.05));
    CHECK(near_abs(h * 0.015 / 0.45, 0.673, 0.0015));
    CHECK(near_rel(h, 20.0, 0.03));
}

TEST_CASE("W7 butter with an insulated bottom, geankoplis-tpuo Ex 5.3-2, read") {
    const Step butter{slab, 0.0462, 8.52, 0.197, 0.197 / (998.0 * 2300.0), 277.6, 297.1};
    const double t = 5 * 3600.0;
    CHECK(near_abs(butter.fourier(t), 0.7238, 0.00005));
    const struct {
        double r, exact, book;
    } rows[] = {{1.0, 292.4, 292.2}, {1 - 25.4 / 46.2, 288.3, 288.3}, {0.0, 287.2, 287.4}};
    for (const auto& row : rows) {
        CAPTURE(row.r);
        CHECK(near_abs(butter.at(t, row.r), row.exact, 0.051));
        CHECK(near_abs(butter.at(t, row.r), row.book, 2.0));
    }
}

TEST_CASE("W8 and W9 can of pea puree, long and short, geankoplis-tpuo Ex 5.3-3 and 5.3-4, read") {
    const Step can{cylinder, 0.03405, 4540, 0.830, 2.007e-7, 29.4, 115.6};
    const double t = 0.75 * 3600;
    const double radial = theta_at(cylinder, can.biot(), can.fourier(t), 0);
    CHECK(near_abs(radial, 0.1105, 0.00005));
    CHECK(near_abs(can.at(t, 0), 106.1, 0.05));
    CHECK(near_abs(can.at(t, 0), 104.4, 2.0));
    const double half = 0.1016 / 2;
    const double axial = theta_at(slab, 4540 * half / 0.830, 2.007e-7 * t / (half * half), 0);
    CHECK(near_abs(axial, 0.7571, 0.00005));
    CHECK(near_abs(radial * axial, 0.0836, 0.0001));
    const double core = 115.6 + (29.4 - 115.6) * radial * axial;
    CHECK(near_abs(core, 108.4, 0.05));
    CHECK(near_abs(core, 106.6, 2.0));
}

TEST_CASE("W10 roast of 1.5 kg, kreith-2011 problem, read") {
    const double radius = std::cbrt(3.0 * 1.5 / (4.0 * 3.14159265358979 * 1000.0));  // 71.0 mm
    const Step roast{ball, radius, 18, 0.5, 0.5 / 4e6, 20, 163};
    CHECK(near_abs(roast.biot(), 2.556, 0.0005));
    const double minutes = roast.time_to(77, 0) / 60;
    CHECK(near_abs(minutes, 132.8, 0.05));
    CHECK(near_rel(minutes, 134, 0.03));
}

TEST_CASE("W11 rib, cengel-hmt 4-77: known disagreement, the book stops at one term below Fo 0.2") {
    const Step rib{ball, 0.0860, 93, 0.45, 0.91e-7, 4.5, 163};
    const double t = 2.75 * 3600;
    CHECK(near_abs(rib.fourier(t), 0.122, 0.0005));
    const double h = root(
        [&](double film) {
            Step other = rib;
            other.film = film;
            return 60.0 - other.at(t, 0);
        },
        20, 400);
    CHECK(near_abs(h, 93, 1.0));
    CHECK(near_abs(h * 0.086 / 0.45, 17.9, 0.2));
    CHECK_FALSE(near_rel(h, 156.9, 0.3));  // the book's h; the whole series asks for 93
    const double one_term = root(
        [&](double film) {
            const heat::Series s = heat::series(ball, film * 0.086 / 0.45, 1);
            return s.centre[0] * std::exp(-s.zeta[0] * s.zeta[0] * rib.fourier(t)) - (60.0 - 163.0) / (4.5 - 163.0);
        },
        20, 400);
    CHECK(near_abs(one_term, 148, 2.0));  // what one term makes of the same inputs
}

TEST_CASE("W12 can in boiling water, singh-heldman-ife, from memory") {
    const double alpha = 0.34 / (900.0 * 3500.0);
    const double t = 1800;
    const double radial = theta_at(cylinder, 2000 * 0.0405 / 0.34, alpha * t / (0.0405 * 0.0405), 0);
    const double axial = theta_at(slab, 2000 * 0.0555 / 0.34, alpha * t / (0.0555 * 0.0555), 0);
    const double core = 100.0 - 65.0 * radial * axial;
    CHECK(near_abs(core, 49.6, 0.05));
    CHECK(near_abs(core, 48.4, 2.0));
}

TEST_CASE("W13 square bar, lienhard-ahtt Ex 5.12, read") {
    const double theta = theta_at(slab, 0.2105, 0.565, 0.0) * theta_at(slab, 0.2105, 0.565, 0.5);
    const double t = 20.0 + 80.0 * theta;
    CHECK(near_abs(t, 86.6, 0.05));
    CHECK(near_abs(t, 87.7, 2.0));
}

TEST_CASE("W14 granite cube and short cylinder, cengel-hmt 4-107, inputs read, answers from memory") {
    const struct {
        double minutes, cube, cube_book, round, round_book;
    } rows[] = {{10, 322.8, 323, 331.0, 331}, {20, 444.8, 445, 448.5, 449}, {60, 499.5, 500, 499.6, 500}};
    for (const auto& row : rows) {
        CAPTURE(row.minutes);
        const double fourier = 1.15e-6 * row.minutes * 60 / (0.025 * 0.025);
        const double flat = theta_at(slab, 0.4, fourier, 0);
        const double radial = theta_at(cylinder, 0.4, fourier, 0);
        const double cube = 500 - 480 * flat * flat * flat;
        const double round = 500 - 480 * flat * radial;
        CHECK(near_abs(cube, row.cube, 0.05));
        CHECK(near_abs(cube, row.cube_book, 2.0));
        CHECK(near_abs(round, row.round, 0.051));
        CHECK(near_abs(round, row.round_book, 2.0));
        // The same through the engine's modes.
        heat::Body body;
        body.shape = facts::Shape::block;
        body.thickness = body.width.emplace(units::millimetres(50));
        body.length = units::millimetres(50);
        const heat::FoodProperties granite{units::Conductivity{2.5}, units::Diffusivity{1.15e-6}, units::Density{2770},
                                           units::SpecificHeat{785}};
        const auto modes = heat::modes_of(body, granite, units::FilmCoefficient{40});
        REQUIRE(modes.ok());
        CHECK(near_abs(500 - 480 * heat::core_at(*modes, units::minutes(row.minutes)), row.cube, 0.06));
    }
}

TEST_CASE("the worked examples that print a time or a temperature: how far the engine is from the books") {
    // For the accuracy table only; each example has its own test above. Without the two known disagreements.
    const Step w1{ball, 0.025, 1200, 0.627, 0.151e-6, 5, 95};
    const Step w2{ball, 0.0275, 1400, 0.6, 0.14e-6, 8, 97};
    const Step w5{slab, 0.010, 9, 0.45, 0.91e-7, 25, -11};
    const Step w8{cylinder, 0.03405, 4540, 0.830, 2.007e-7, 29.4, 115.6};
    const Step w10{ball, 0.0710, 18, 0.5, 1.25e-7, 20, 163};
    const double shares[] = {w1.time_to(70, 0) / 60 / 14.4, w2.time_to(70, 0) / 60 / 17.8, w5.time_to(2, 1) / 5590,
                             w10.time_to(77, 0) / 60 / 134};
    double worst = 0.0;
    for (const double share : shares) {
        worst = std::max(worst, std::abs(share - 1.0));
    }
    CHECK(worst < 0.03);
    const double half = 0.1016 / 2;
    const double w9 =
        115.6 + (w8.at(2700, 0) - 115.6) * theta_at(slab, 4540 * half / 0.830, 2.007e-7 * 2700 / (half * half), 0);
    const double differences[] = {w8.at(2700, 0) - 104.4, w9 - 106.6};  // the largest of the twelve
    const double widest = std::max(std::abs(differences[0]), std::abs(differences[1]));
    CHECK(widest < 2.0);
    support::record_accuracy(
        "4-worked-examples", "twelve worked textbook examples (two more are known misprints, named in the tests)",
        "answers printed in the books, some read off charts",
        "times " + support::at_most(100 * worst, "%") + ", temperatures " + support::at_most(widest, "K"));
}

TEST_CASE("heat of a short cylinder as two bodies, lienhard-ahtt Ex 5.13 rule, read") {
    // Q/Qmax = q1 + q2 (1 - q1): the volume mean of a product is the product of the means.
    const double q1 = 1.0 - heat::theta_mean(cylinder, 3.0, 0.2);
    const double q2 = 1.0 - heat::theta_mean(slab, 5.0, 0.1);
    const double product = 1.0 - heat::theta_mean(cylinder, 3.0, 0.2) * heat::theta_mean(slab, 5.0, 0.1);
    CHECK(near_rel(q1 + q2 * (1 - q1), product, 1e-12));
    CHECK(q1 > 0.0);
}
