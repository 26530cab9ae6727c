// SPDX-License-Identifier: MIT
// Steps: many short ones and few long ones agree, and a bath without food follows its closed form.
#include "heat/bath.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using support::near_abs;
using units::celsius;
using units::hours;
using units::kelvins;
using units::litres;
using units::minutes;
using units::seconds;

namespace {

units::History air() {
    units::History history;
    history.add(hours(0), celsius(8));
    history.add(hours(3), celsius(-6));
    history.add(hours(8), celsius(1));
    return history;
}

heat::Bath bath_with(const heat::Modes& modes, std::size_t& food) {
    heat::Bath bath({units::HeatLoss{1.3}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(20), celsius(67),
                    air());
    food = bath.put_in({modes, units::HeatCapacity{9000}, celsius(3), kelvins(1)});
    return bath;
}

void advance(heat::Bath& bath, units::Duration to, units::Duration step) {
    while (bath.now() + step < to) {
        bath.advance_to(bath.now() + step);
    }
    bath.advance_to(to);
}

}  // namespace

TEST_CASE("the program's own steps agree with steps of one second") {
    for (const facts::Shape shape :
         {facts::Shape::slab, facts::Shape::round, facts::Shape::block, facts::Shape::ball}) {
        for (const double mm : {5.0, 12.0, 30.0, 90.0, 160.0}) {
            for (const double film : {95.0, 600.0}) {
                CAPTURE(facts::to_name(shape));
                CAPTURE(mm);
                CAPTURE(film);
                const heat::Modes modes = support::piece_of_meat(shape, mm, 100, 180, film);
                std::size_t food = 0;
                heat::Bath coarse = bath_with(modes, food);
                heat::Bath fine = bath_with(modes, food);
                fine.record(false);
                for (int quarter = 1; quarter <= 12; ++quarter) {
                    coarse.advance_to(minutes(15.0 * quarter));
                    advance(fine, minutes(15.0 * quarter), seconds(1));
                    CAPTURE(quarter);
                    CHECK(near_abs(coarse.temperature().celsius(), fine.temperature().celsius(), 0.005));
                    CHECK(near_abs(coarse.core(food).celsius(), fine.core(food).celsius(), 0.02));
                    if (quarter == 5 || quarter == 9) {
                        coarse.pour(litres(2), litres(2), celsius(95));
                        fine.pour(litres(2), litres(2), celsius(95));
                    }
                }
            }
        }
    }
}

TEST_CASE("two half steps are one step where the bath is linear, and close where it is not") {
    // The bath held up by an endless liner: linear, so any steps give the same to rounding.
    const heat::Modes modes = support::piece_of_meat(facts::Shape::round, 70, 100, 180, 300);
    const auto core_after = [&](double liner, double step) {
        heat::Bath bath({units::HeatLoss{1.3}, units::HeatCapacity{liner}, units::Area{0.15}}, litres(10), celsius(67),
                        air());
        const auto food = bath.put_in({modes, units::HeatCapacity{9000}, celsius(3), kelvins(0)});
        advance(bath, hours(4), seconds(step));
        return bath.core(food).celsius();
    };
    CHECK(near_abs(core_after(1e15, 240), core_after(1e15, 120), 1e-9));
    const double coarse = std::abs(core_after(4000, 240) - core_after(4000, 15));
    const double fine = std::abs(core_after(4000, 120) - core_after(4000, 15));
    CHECK(coarse < 0.02);
    CHECK(fine <= coarse);
}

TEST_CASE("a bath without food follows the cooling law") {
    for (const double loss : {0.3, 1.0, 3.0}) {
        for (const double volume : {3.0, 12.0, 36.0}) {
            CAPTURE(loss);
            CAPTURE(volume);
            units::History steady;
            steady.add(hours(0), celsius(-3));
            heat::Bath bath({units::HeatLoss{loss}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(volume),
                            celsius(64), steady);
            const double capacity = bath.capacity().si();
            bath.advance_to(hours(14));
            CHECK(near_abs(bath.temperature().celsius(), -3 + 67 * std::exp(-loss * 14 * 3600 / capacity), 0.002));
        }
    }
}

TEST_CASE("a steady bath gives the food its own series") {
    const heat::Modes modes = support::piece_of_meat(facts::Shape::block, 60, 100, 180, 300);
    units::History steady;
    steady.add(hours(0), celsius(60));
    heat::Bath bath({units::HeatLoss{0}, units::HeatCapacity{1e15}, units::Area{0.15}}, litres(10), celsius(60),
                    steady);
    const auto food = bath.put_in({modes, units::HeatCapacity{5000}, celsius(5), kelvins(0)});
    for (int i = 1; i < 40; ++i) {
        bath.advance_to(minutes(7.0 * i));
        CHECK(near_abs(bath.core(food).celsius(), 60 - 55 * heat::core_at(modes, bath.now()), 1e-6));
        CHECK(near_abs(bath.surface(food).celsius(), 60 - 55 * heat::surface_at(modes, bath.now()), 1e-6));
        CHECK(near_abs(bath.mean(food).celsius(), 60 - 55 * heat::mean_at(modes, bath.now()), 1e-6));
    }
}

TEST_CASE("time runs forward only; going nowhere changes nothing") {
    std::size_t food = 0;
    heat::Bath bath = bath_with(support::piece_of_meat(facts::Shape::slab, 25, 100, 180, 300), food);
    bath.advance_to(hours(1));
    const double t = bath.temperature().celsius();
    const auto points = bath.bath_history().points.size();
    bath.advance_to(hours(1));
    bath.advance_to(minutes(10));
    CHECK(bath.now() == hours(1));
    CHECK(bath.temperature().celsius() == t);
    CHECK(bath.bath_history().points.size() == points);
}
