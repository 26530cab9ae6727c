// SPDX-License-Identifier: MIT
// Laws of the bath: heat and mass are conserved through everything that is done to it.
#include "heat/bath.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>
#include <vector>

using namespace holdwater;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::hours;
using units::kelvins;
using units::litres;
using units::minutes;

namespace {

heat::Modes piece(facts::Shape shape, double mm, double film) {
    return support::piece_of_meat(shape, mm, 1.5 * mm, 3 * mm, film);
}

units::History weather() {
    units::History air;
    air.add(hours(0), celsius(12));
    air.add(hours(2.3), celsius(3));
    air.add(hours(2.3), celsius(-4));  // a front
    air.add(hours(9), celsius(-11));
    air.add(hours(13.1), celsius(6));
    return air;
}

double imbalance(const heat::Bath& bath, double stored_at_start) {
    const heat::Ledger& l = bath.ledger();
    const double change = bath.stored_energy() - stored_at_start;
    const double scale = std::max({std::abs(l.poured), std::abs(change), std::abs(l.taken_out), l.lost_to_outside});
    return std::abs(l.poured - change - l.lost_to_outside - l.lost_by_lid - l.taken_out) / scale;
}

}  // namespace

TEST_CASE("energy closes to 1e-9 through swaps, lids, food in and out, steps of any length") {
    std::mt19937 random(20270);
    const auto between = [&](double a, double b) {
        return a + (b - a) * static_cast<double>(random()) / static_cast<double>(std::mt19937::max());
    };
    for (int run = 0; run < 60; ++run) {
        CAPTURE(run);
        heat::Bath bath({units::HeatLoss{between(0.2, 2.5)}, units::HeatCapacity{between(0, 9000)},
                         units::Area{between(0.05, 0.25)}},
                        litres(run % 7 == 0 ? 0.0 : between(5, 40)), celsius(between(10, 80)), weather());
        if (run % 7 == 0) {
            bath.pour(litres(0), litres(25), celsius(between(60, 95)));
        }
        const double start = bath.stored_energy();
        const double poured = bath.ledger().poured;
        std::vector<std::size_t> inside;
        for (int event = 0; event < 25; ++event) {
            bath.advance_to(bath.now() + minutes(between(0, 50)));
            switch (random() % 5) {
                case 0:
                    bath.pour(litres(between(0, 4)), litres(between(0, 5)), celsius(between(0, 98)));
                    break;
                case 1:
                    bath.open_lid(minutes(between(0, 6)));
                    break;
                case 2:
                case 3:
                    if (inside.size() < 4) {
                        constexpr facts::Shape shapes[] = {facts::Shape::slab, facts::Shape::round, facts::Shape::block,
                                                           facts::Shape::ball};
                        inside.push_back(bath.put_in({piece(shapes[random() % 4], between(8, 120), between(60, 900)),
                                                      units::HeatCapacity{between(300, 25000)},
                                                      celsius(between(-2, 60)), kelvins(between(0, 2))}));
                    }
                    break;
                default:
                    if (!inside.empty()) {
                        bath.take_out(inside[random() % inside.size()]);
                    }
            }
            const heat::Ledger& l = bath.ledger();
            const double change = bath.stored_energy() - start;
            const double error = l.poured - poured - change - l.lost_to_outside - l.lost_by_lid - l.taken_out;
            CHECK(std::abs(error) <= 1e-9 * (std::abs(start) + l.poured));
        }
    }
}

TEST_CASE("what the bath gives, the food has: heat of the food is its capacity times the rise of its mean") {
    for (const facts::Shape shape :
         {facts::Shape::slab, facts::Shape::round, facts::Shape::block, facts::Shape::ball}) {
        heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(30), celsius(65),
                        weather());
        const auto food = bath.put_in({piece(shape, 70, 300), units::HeatCapacity{9000}, celsius(4), kelvins(1.5)});
        for (double h = 0.1; h < 14; h *= 1.7) {
            bath.advance_to(hours(h));
            if (h > 1 && h < 2) {
                bath.pour(litres(1), litres(2), celsius(96));
            }
            CAPTURE(h);
            CHECK(near_rel(bath.ledger().given_to_food, 9000 * (bath.mean(food).celsius() - 4), 1e-9));
        }
        CHECK(imbalance(bath, heat::Bath({units::HeatLoss{1}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(30),
                                         celsius(65), weather())
                                  .stored_energy()) < 1e-9);
    }
}

TEST_CASE("mass is conserved: litres are those of their own temperature") {
    units::History air;
    air.add(hours(0), celsius(10));
    heat::Bath bath({units::HeatLoss{0}, units::HeatCapacity{0}, units::Area{0.1}}, litres(20), celsius(10), air);
    const auto mass = [&] { return bath.water().si() * heat::water_density(bath.temperature()).si(); };
    const double cold = 0.020 * heat::water_density(celsius(10)).si();
    CHECK(near_rel(mass(), cold, 1e-12));
    bath.pour(litres(0), litres(15), celsius(96));
    const double hot = 0.015 * heat::water_density(celsius(96)).si();
    CHECK(near_rel(mass(), cold + hot, 1e-12));
    CHECK(near_rel(bath.temperature().celsius(), (cold * 10 + hot * 96) / (cold + hot), 1e-12));
    const double before = mass();
    const double rho = heat::water_density(bath.temperature()).si();
    bath.pour(litres(5), litres(0), celsius(96));
    CHECK(near_rel(mass(), before - 0.005 * rho, 1e-12));
    bath.pour(litres(500), litres(1), celsius(50));  // no more than there is
    CHECK(near_rel(mass(), 0.001 * heat::water_density(celsius(50)).si(), 1e-12));
    CHECK(near_rel(bath.temperature().celsius(), 50.0, 1e-12));
}

TEST_CASE("an empty box holds its liner: pouring warms it") {
    units::History air;
    air.add(hours(0), celsius(5));
    heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{5000}, units::Area{0.1}}, litres(0), celsius(5), air);
    bath.advance_to(minutes(30));
    CHECK(near_abs(bath.temperature().celsius(), 5.0, 1e-9));
    CHECK(bath.water().si() == 0.0);
    bath.pour(litres(0), litres(20), celsius(70));
    const double water = 0.020 * heat::water_density(celsius(70)).si() * heat::water_specific_heat().si();
    CHECK(near_rel(bath.temperature().celsius(), (5000 * 5 + water * 70) / (5000 + water), 1e-12));
}

TEST_CASE("nothing at all in the box: a temperature that pouring replaces") {
    units::History air;
    air.add(hours(0), celsius(5));
    heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{0}, units::Area{0.1}}, litres(0), celsius(5), air);
    bath.advance_to(hours(2));
    bath.open_lid(minutes(5));
    CHECK(bath.temperature().celsius() == 5.0);
    bath.pour(litres(0), litres(10), celsius(60));
    CHECK(near_abs(bath.temperature().celsius(), 60.0, 1e-12));
}

TEST_CASE("an open lid costs what the table says, and a little for the change of air") {
    units::History air;
    air.add(hours(0), celsius(15.6));
    heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{0}, units::Area{0.12}}, litres(20), celsius(60), air);
    bath.open_lid(minutes(5));
    CHECK(near_rel(bath.ledger().lost_by_lid, 2587 * 0.12 * 310, 0.05));  // 93 kJ and one change of air
    CHECK(near_abs(60 - bath.temperature().celsius(), 1.1, 0.1));         // heat reference e.4: 1.1 K in 20 kg
    const double before = bath.temperature().celsius();
    bath.open_lid(minutes(0));
    CHECK(bath.temperature().celsius() == before);
}

TEST_CASE("a bath without outside air is refused") {
    CHECK_THROWS_AS(heat::Bath({}, litres(10), celsius(60), units::History{}), std::invalid_argument);
}
