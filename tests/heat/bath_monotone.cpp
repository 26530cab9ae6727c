// SPDX-License-Identifier: MIT
// Laws of the bath: better boxes, colder weather, more food, superposition, continuity of the core.
#include "heat/bath.hpp"
#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

using namespace holdwater;
using support::near_abs;
using units::celsius;
using units::hours;
using units::kelvins;
using units::litres;
using units::minutes;

namespace {

heat::Modes broad_piece(facts::Shape shape, double mm, double film = 300) {
    return support::piece_of_meat(shape, mm, 100, 180, film);
}

units::History air(double at_first, double later) {
    units::History history;
    history.add(hours(0), celsius(at_first));
    history.add(hours(10), celsius(later));
    return history;
}

struct Setup {
    double loss = 1.0;
    double liner = 4000;
    double litres = 30;
    double bath = 66;
    double outside = 2;
    double later = -5;
    double food = 9000;  // J/K
    double start = 4;
    double colder = 0.0;
    facts::Shape shape = facts::Shape::round;
    double mm = 80;
};

/// Bath and core at each quarter hour of a day with two additions.
struct Course {
    std::vector<double> bath;
    std::vector<double> core;
};

Course run(const Setup& s) {
    heat::Bath bath({units::HeatLoss{s.loss}, units::HeatCapacity{s.liner}, units::Area{0.15}}, litres(s.litres),
                    celsius(s.bath), air(s.outside, s.later));
    const auto food =
        bath.put_in({broad_piece(s.shape, s.mm), units::HeatCapacity{s.food}, celsius(s.start), kelvins(s.colder)});
    Course course;
    for (int quarter = 1; quarter <= 56; ++quarter) {
        bath.advance_to(minutes(15.0 * quarter));
        if (quarter == 12 || quarter == 30) {
            bath.pour(litres(2), litres(2), celsius(95));
        }
        course.bath.push_back(bath.temperature().celsius());
        course.core.push_back(bath.core(food).celsius());
    }
    return course;
}

void check_not_below(const Course& upper, const Course& lower) {
    for (std::size_t i = 0; i < upper.bath.size(); ++i) {
        CAPTURE(i);
        CHECK(upper.bath[i] >= lower.bath[i] - 1e-9);
    }
}

}  // namespace

TEST_CASE("a better box is never colder, in bath and in core") {
    for (const facts::Shape shape : {facts::Shape::slab, facts::Shape::round, facts::Shape::block}) {
        Course last;
        for (const double loss : {2.5, 1.5, 1.0, 0.6, 0.2, 0.0}) {
            CAPTURE(loss);
            Setup s;
            s.loss = loss;
            s.shape = shape;
            const Course now = run(s);
            if (!last.bath.empty()) {
                check_not_below(now, last);
                for (std::size_t i = 4; i < now.core.size(); ++i) {
                    CHECK(now.core[i] >= last.core[i] - 1e-6);
                }
            }
            last = now;
        }
    }
}

TEST_CASE("warmer weather, hotter fill, warmer food and less food never make a colder bath") {
    const Setup base;
    Setup s = base;
    s.outside += 5;
    s.later += 9;
    check_not_below(run(s), run(base));
    s = base;
    s.bath += 3;
    check_not_below(run(s), run(base));
    s = base;
    s.start += 10;
    check_not_below(run(s), run(base));
    s = base;
    s.food /= 2;
    check_not_below(run(s), run(base));
}

TEST_CASE("superposition: the answer to two changes is the sum of the answers to each") {
    // The bath is linear in start, outside and food temperature; only the poured mass depends on temperature, so the
    // volumes poured here are nothing.
    const auto course = [](double bath_start, double outside, double food_start) {
        heat::Bath bath({units::HeatLoss{1.2}, units::HeatCapacity{1e5}, units::Area{0.15}}, litres(0),
                        celsius(bath_start), air(outside, outside));
        const auto food = bath.put_in(
            {broad_piece(facts::Shape::block, 60), units::HeatCapacity{12000}, celsius(food_start), kelvins(0)});
        std::vector<double> values;
        for (int quarter = 1; quarter <= 40; ++quarter) {
            bath.advance_to(minutes(15.0 * quarter));
            values.push_back(bath.temperature().celsius());
            values.push_back(bath.core(food).celsius());
            values.push_back(bath.mean(food).celsius());
        }
        return values;
    };
    const auto all = course(66, -5, 4);
    const auto first = course(66, 0, 0);
    const auto second = course(0, -5, 0);
    const auto third = course(0, 0, 4);
    for (std::size_t i = 0; i < all.size(); ++i) {
        CAPTURE(i);
        CHECK(near_abs(all[i], first[i] + second[i] + third[i], 1e-9));
    }
}

TEST_CASE("the core is continuous through swaps, lids, and other food going in and out") {
    for (const facts::Shape shape :
         {facts::Shape::slab, facts::Shape::round, facts::Shape::block, facts::Shape::ball}) {
        for (const double mm : {6.0, 25.0, 80.0, 160.0}) {
            CAPTURE(facts::to_name(shape));
            CAPTURE(mm);
            heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(30), celsius(66),
                            air(2, -5));
            const auto food = bath.put_in({broad_piece(shape, mm), units::HeatCapacity{6000}, celsius(4), kelvins(1)});
            CHECK(near_abs(bath.core(food).celsius(), 4.0, 1e-9));
            const auto same_through = [&](auto change) {
                bath.advance_to(bath.now() + minutes(13));
                const double before = bath.core(food).celsius();
                change();
                CHECK(near_abs(bath.core(food).celsius(), before, 1e-9));
            };
            same_through([&] { bath.pour(litres(10), litres(10), celsius(98)); });
            same_through([&] { bath.pour(litres(5), litres(5), celsius(2)); });
            same_through([&] { bath.open_lid(minutes(5)); });
            std::size_t other = 0;
            same_through([&] {
                other = bath.put_in(
                    {broad_piece(facts::Shape::slab, 30), units::HeatCapacity{5000}, celsius(1), kelvins(0)});
            });
            same_through([&] { bath.take_out(other); });
        }
    }
}

TEST_CASE("a bath that sees its food colder warms it later, and by no more than that") {
    Setup s;
    const Course plain = run(s);
    s.colder = 2.0;
    const Course colder = run(s);
    for (std::size_t i = 4; i < plain.core.size(); ++i) {
        CAPTURE(i);
        CHECK(colder.core[i] <= plain.core[i] + 1e-9);
        CHECK(colder.core[i] >= plain.core[i] - 2.2);
    }
    CHECK(colder.core.back() < plain.core.back() - 1.0);
}

TEST_CASE("food that is out keeps its temperature, and its history ends") {
    heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(30), celsius(66),
                    air(2, -5));
    bath.advance_to(hours(1));
    const auto food =
        bath.put_in({broad_piece(facts::Shape::slab, 25), units::HeatCapacity{3000}, celsius(4), kelvins(0)});
    CHECK(bath.core_history(food).points.front().at == hours(1));
    CHECK(bath.core_history(food).points.front().value == celsius(4));
    bath.advance_to(hours(3));
    bath.take_out(food);
    const auto core = bath.core(food);
    const auto capacity = bath.capacity();
    bath.advance_to(hours(5));
    CHECK(bath.core(food) == core);
    CHECK(bath.core_history(food).points.back().at == hours(3));
    CHECK(bath.capacity() == capacity);
    CHECK(bath.bath_history().points.back().at == hours(5));
}

TEST_CASE("without recording the state is the same and no history is kept") {
    const auto end = [](bool record) {
        heat::Bath bath({units::HeatLoss{1}, units::HeatCapacity{4000}, units::Area{0.15}}, litres(30), celsius(66),
                        air(2, -5));
        bath.record(record);
        const auto food =
            bath.put_in({broad_piece(facts::Shape::round, 70), units::HeatCapacity{6000}, celsius(4), kelvins(1)});
        bath.advance_to(hours(5));
        CHECK(bath.core_history(food).empty() == !record);
        return bath.core(food).celsius();
    };
    CHECK(end(true) == end(false));
}
