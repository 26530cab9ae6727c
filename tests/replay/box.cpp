// SPDX-License-Identifier: MIT
// The box of the replays against what is known otherwise: mixing, exponential cooling, the heat that food takes, and
// the core against another grid.
#include "heat/water.hpp"
#include "support/method_of_lines.hpp"
#include "support/near.hpp"
#include "support/replay_box.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using support::near_abs;

namespace {

bool go_on(const support::ReplayLook&) {
    return true;
}

support::ReplayWorld world() {
    support::ReplayWorld world;
    world.inside = {0.5, 0.3, 0.3};
    world.loss = 1.5;
    world.air = [](double) { return 5.0; };
    return world;
}

support::ReplayFood food(int b) {
    support::ReplayFood food;
    food.b = b;
    food.half = 0.03;
    food.diffusivity = 1.2e-7;
    food.conductivity = 0.45;
    food.film = 150.0;
    food.capacity = 10000.0;
    food.start = 4.0;
    food.volume = 2.8e-3;
    return food;
}

void against_the_lines(int b, std::optional<double> half_length) {
    support::ReplayWorld here = world();
    here.foods.push_back(food(b));
    here.foods.front().half_length = half_length;
    support::ReplayBox box(here, 65.0);
    box.pour(0.0, 0.030, 65.0);
    box.put_food_in();
    support::LinesCase lines;
    lines.axes.push_back({b, here.foods.front().half, 41});
    if (half_length) {
        lines.axes.push_back({0, *half_length, 31});
    }
    lines.diffusivity = 1.2e-7;
    lines.conductivity = 0.45;
    lines.film = 150.0;
    lines.food_capacity = 10000.0;
    lines.food_start = 4.0;
    lines.water = 0.030;
    lines.liner = 2.0 * (0.5 * 0.3 + 0.5 * 0.3 + 0.3 * 0.3) * 5400.0;  // facts liner.*
    lines.loss = 1.5;
    lines.bath_start = 65.0;
    lines.outside_start = 5.0;
    std::vector<double> moments;
    for (double t = 900.0; t <= 6.0 * 3600.0; t += 900.0) {
        moments.push_back(t);
    }
    const auto states = support::run_lines(lines, moments);
    for (std::size_t i = 0; i < moments.size(); ++i) {
        box.advance_to(moments[i], 900.0, go_on);
        CAPTURE(moments[i]);
        CHECK(near_abs(box.bath(), states[i].bath, 0.01));
        CHECK(near_abs(box.look().cores.front(), states[i].core, 0.15));
    }
}

}  // namespace

TEST_CASE("water alone: mixing by heat content, then cooling as exp(-t UA / C)") {
    support::ReplayWorld empty = world();
    support::ReplayBox box(empty, 5.0);
    box.pour(0.0, 0.010, 10.0);
    box.pour(0.0, 0.020, 96.0);
    const double cp = heat::water_specific_heat().si();
    const double cold = 0.010 * heat::water_density(units::celsius(10)).si() * cp;
    const double hot = 0.020 * heat::water_density(units::celsius(96)).si() * cp;
    const double liner = 2.0 * (0.15 + 0.15 + 0.09) * 5400.0;  // facts liner.*
    const double mixed = (liner * 5.0 + cold * 10.0 + hot * 96.0) / (liner + cold + hot);
    CHECK(near_abs(box.bath(), mixed, 1e-9));
    box.advance_to(5.0 * 3600.0, 600.0, go_on);
    const double fallen = 5.0 + (mixed - 5.0) * std::exp(-5.0 * 3600.0 * 1.5 / (cold + hot + liner));
    CHECK(near_abs(box.bath(), fallen, 1e-3));
    CHECK(near_abs(box.filled_volume() * heat::water_density(units::celsius(box.bath())).si() * cp, cold + hot, 1.0));
}

TEST_CASE("slab: bath and core as the method of lines has them") {
    against_the_lines(0, std::nullopt);
}

TEST_CASE("round of finite length: bath and core as the method of lines has them") {
    against_the_lines(1, 0.09);
}

TEST_CASE("ball: the core of one in a sea of water by its series") {
    support::ReplayWorld sea = world();
    sea.foods.push_back(food(2));
    sea.foods.front().capacity = 1e-3;
    sea.loss = 0.0;
    support::ReplayBox box(sea, 60.0);
    box.pour(0.0, 0.030, 60.0);
    box.put_food_in();
    // One term of the series, Biot 10: zeta from 1 - zeta cot zeta = Bi, by bisection; good to 1e-3 beyond Fourier 0.2.
    double low = 2.0;
    double high = 3.14;
    for (int i = 0; i < 60; ++i) {
        const double z = 0.5 * (low + high);
        (1.0 - z / std::tan(z) < 10.0 ? low : high) = z;
    }
    const double z = low;
    const double weight = 4.0 * (std::sin(z) - z * std::cos(z)) / (2.0 * z - std::sin(2.0 * z));
    for (const double fourier : {0.3, 0.5, 0.8}) {
        const double at = fourier * 0.03 * 0.03 / 1.2e-7;
        box.advance_to(at, 600.0, go_on);
        CAPTURE(fourier);
        CHECK(near_abs(box.look().cores.front(), 60.0 - 56.0 * weight * std::exp(-z * z * fourier), 0.1));
    }
}

TEST_CASE("unstirred: the food meets the bath that much colder an hour after the last pour") {
    support::ReplayWorld still = world();
    still.loss = 0.0;
    still.colder = 1.5;
    support::ReplayBox box(still, 60.0);
    box.pour(0.0, 0.030, 60.0);
    CHECK(near_abs(box.look().seen, box.bath(), 1e-12));
    box.advance_to(1800.0, 600.0, go_on);
    CHECK(near_abs(box.look().seen, box.bath() - 0.75, 1e-9));
    box.advance_to(7200.0, 600.0, go_on);
    CHECK(near_abs(box.look().seen, box.bath() - 1.5, 1e-9));
    box.pour(0.0, 0.001, 60.0);
    CHECK(near_abs(box.look().seen, box.bath(), 1e-12));
}
