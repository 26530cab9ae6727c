// SPDX-License-Identifier: MIT
// The engine against an independent solver: random pieces in a drifting bath with two additions.
#include "heat/bath.hpp"
#include "support/accuracy.hpp"
#include "support/method_of_lines.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

using namespace holdwater;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::litres;
using units::seconds;

namespace {

constexpr double quarter = 900.0;  // s

class Dice {
  public:
    explicit Dice(unsigned seed) : random_(seed) {}
    double between(double a, double b) {
        return a + (b - a) * static_cast<double>(random_()) / static_cast<double>(std::mt19937::max());
    }

  private:
    std::mt19937 random_;
};

struct Worst {
    double core = 0.0;  // K
    double bath = 0.0;  // K
    double heat = 0.0;  // share
};

/// The method of lines on two grids, taken to the limit of a fine one: its error goes with the square of the spacing.
std::vector<support::LinesState> extrapolated(support::LinesCase c, int intervals, const std::vector<double>& moments) {
    const auto on_grid = [&](int count) {
        for (support::Axis& axis : c.axes) {
            axis.nodes = count + 1;
        }
        return support::run_lines(c, moments);
    };
    auto fine = on_grid(intervals * 3 / 2);
    const auto coarse = on_grid(intervals);
    constexpr double gain = 1.0 / (1.5 * 1.5 - 1.0);
    for (std::size_t i = 0; i < fine.size(); ++i) {
        fine[i].bath += gain * (fine[i].bath - coarse[i].bath);
        fine[i].core += gain * (fine[i].core - coarse[i].core);
        fine[i].heat += gain * (fine[i].heat - coarse[i].heat);
    }
    return fine;
}

/// One random case of a shape, by both ways, over `quarters` quarter hours.
Worst compare(facts::Shape shape, unsigned seed, int intervals, int quarters) {
    Dice dice(seed);
    const double thickness = dice.between(0.015, 0.11);
    const double width = thickness * dice.between(1.0, 2.0);
    const double length = thickness * dice.between(1.0, 4.0);
    heat::Body body;
    body.shape = shape;
    body.thickness = units::metres(thickness);
    body.width = units::metres(width);
    body.length = units::metres(length);

    support::LinesCase c;
    c.diffusivity = dice.between(1.0e-7, 1.5e-7);
    c.conductivity = dice.between(0.40, 0.56);
    c.film = dice.between(70, 700);
    c.food_capacity = dice.between(1500, 14000);
    c.food_start = dice.between(-1, 12);
    c.water = dice.between(0.012, 0.036);
    c.liner = dice.between(0, 7000);
    c.loss = dice.between(0.3, 2.0);
    c.bath_start = dice.between(60, 72);
    c.outside_start = dice.between(-10, 15);
    c.outside_slope = dice.between(-3, 3) / 3600;
    for (const double share : {0.3, 0.6}) {
        // Not in the last minutes of a quarter hour: the engine lets the outermost two per cent of a food's heat follow
        // a jump at once, where the grid needs a minute.
        const double at = quarter * std::round(share * quarters + dice.between(-2, 2)) + 60.0 * dice.between(1, 10);
        c.pours.push_back({at, dice.between(0, 0.003), dice.between(0, 0.004), dice.between(80, 97)});
    }
    switch (shape) {
        case facts::Shape::slab:
            c.axes = {{0, thickness / 2}};
            break;
        case facts::Shape::round:
            c.axes = {{1, thickness / 2}, {0, length / 2}};
            break;
        default:
            c.axes = {{0, thickness / 2}, {0, width / 2}, {0, length / 2}};
    }

    const heat::FoodProperties properties{units::Conductivity{c.conductivity}, units::Diffusivity{c.diffusivity},
                                          units::Density{1000},
                                          units::SpecificHeat{c.conductivity / c.diffusivity / 1000}};
    const auto modes = heat::modes_of(body, properties, units::FilmCoefficient{c.film});
    REQUIRE(modes.ok());
    units::History air;
    const double end = quarters * quarter;
    air.add(seconds(0), celsius(c.outside_start));
    air.add(seconds(end), celsius(c.outside_start + c.outside_slope * end));
    heat::Bath bath({units::HeatLoss{c.loss}, units::HeatCapacity{c.liner}, units::Area{0.1}}, units::Volume{c.water},
                    celsius(c.bath_start), air);
    const auto food =
        bath.put_in({*modes, units::HeatCapacity{c.food_capacity}, celsius(c.food_start), units::kelvins(0)});

    std::vector<double> moments;
    for (int q = 1; q <= quarters; ++q) {
        moments.push_back(q * quarter);
    }
    const auto lines = extrapolated(c, intervals, moments);
    Worst worst;
    std::size_t next_pour = 0;
    for (std::size_t i = 0; i < moments.size(); ++i) {
        for (; next_pour < c.pours.size() && c.pours[next_pour].at <= moments[i]; ++next_pour) {
            const auto& p = c.pours[next_pour];
            bath.advance_to(seconds(p.at));
            bath.pour(units::Volume{p.removed}, units::Volume{p.added}, celsius(p.poured));
        }
        bath.advance_to(seconds(moments[i]));
        CAPTURE(i);
        CAPTURE(1e3 * thickness);
        const double core = bath.core(food).celsius();
        CHECK(near_abs(core, lines[i].core, 0.05));
        CHECK(near_abs(bath.temperature().celsius(), lines[i].bath, 0.05));
        CHECK(near_rel(bath.ledger().given_to_food, lines[i].heat, 0.001));
        worst.core = std::max(worst.core, std::abs(core - lines[i].core));
        worst.bath = std::max(worst.bath, std::abs(bath.temperature().celsius() - lines[i].bath));
        worst.heat = std::max(worst.heat, std::abs(bath.ledger().given_to_food / lines[i].heat - 1.0));
    }
    return worst;
}

void run(facts::Shape shape, unsigned first_seed, int cases, int intervals, int quarters) {
    Worst all;
    for (int i = 0; i < cases; ++i) {
        const unsigned seed = first_seed + static_cast<unsigned>(i);
        CAPTURE(seed);
        const Worst worst = compare(shape, seed, intervals, quarters);
        all.core = std::max(all.core, worst.core);
        all.bath = std::max(all.bath, worst.bath);
        all.heat = std::max(all.heat, worst.heat);
    }
    MESSAGE(std::string(facts::to_name(shape)), ": ", cases, " cases; largest difference core ", all.core, " K, bath ",
            all.bath, " K, heat ", 100 * all.heat, " %");
    const std::string name(facts::to_name(shape));
    support::record_accuracy("6-lines-" + name,
                             "core, bath and heat taken by a " + name + " in a bath with two top-ups, " +
                                 std::to_string(cases) + " random cases",
                             "method of lines, SUNDIALS CVODE",
                             "core " + support::at_most(all.core, "K") + ", bath " + support::at_most(all.bath, "K") +
                                 ", heat " + support::at_most(100 * all.heat, "%"));
}

}  // namespace

TEST_CASE("slab: core within 0.05 K and heat within 0.1 % of CVODE at every quarter hour") {
    run(facts::Shape::slab, 1000, 20, 60, 56);
}

TEST_CASE("round: core within 0.05 K and heat within 0.1 % of CVODE at every quarter hour") {
    run(facts::Shape::round, 2000, 12, 18, 32);
}

TEST_CASE("block: core within 0.05 K and heat within 0.1 % of CVODE at every quarter hour") {
    run(facts::Shape::block, 3000, 10, 8, 20);
}
