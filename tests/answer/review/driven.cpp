// SPDX-License-Identifier: MIT
// A food under a given bath against its own constant-bath sum, against a run of the whole bath, and against laws.
#include "heat/driven.hpp"

#include "heat/bath.hpp"
#include "support/near.hpp"
#include "support/pieces.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace holdwater;
using support::meat;
using support::near_abs;
using units::celsius;
using units::Duration;
using units::History;
using units::hours;
using units::minutes;

namespace {

heat::Modes modes_of(facts::Shape shape, double millimetres) {
    heat::Body body;
    body.shape = shape;
    body.thickness = units::millimetres(millimetres);
    if (shape == facts::Shape::round) {
        body.length = units::millimetres(300);
    }
    auto modes = heat::modes_of(body, meat, units::FilmCoefficient{200});
    REQUIRE(modes.ok());
    return std::move(modes).value();
}

History constant(double bath) {
    History history;
    history.add(Duration{0}, celsius(bath));
    return history;
}

}  // namespace

TEST_CASE("in a constant bath the driven core is the sum of the modes, at every point") {
    for (const auto shape : {facts::Shape::slab, facts::Shape::round, facts::Shape::ball}) {
        for (const double size : {12.0, 40.0, 85.0}) {
            CAPTURE(size);
            const heat::Modes modes = modes_of(shape, size);
            const heat::Driven result = heat::driven(modes, celsius(4), constant(62), hours(1), hours(9));
            REQUIRE(result.core.points.size() > 50);
            for (const History::Point& point : result.core.points) {
                // The very first point is the food before the water touches it.
                const Duration since = point.at - hours(1);
                const double theta = since.si() > 0 ? heat::core_at(modes, since) : 1.0;
                CHECK(near_abs(point.value.celsius(), 62 + theta * (4 - 62), 1e-9));
            }
            CHECK(near_abs(result.mean.points.back().value.celsius(), 62 + heat::mean_at(modes, hours(8)) * (4 - 62),
                           1e-9));
        }
    }
}

TEST_CASE("points that change nothing change nothing") {
    const heat::Modes modes = modes_of(facts::Shape::round, 85);
    History plain;
    plain.add(hours(0), celsius(66));
    plain.add(hours(8), celsius(58));
    History dense;
    for (int i = 0; i <= 97; ++i) {
        dense.add(hours(8.0 * i / 97.0), celsius(66 - 8.0 * i / 97.0));
    }
    const History a = heat::driven(modes, celsius(4), plain, hours(0), hours(8)).core;
    const History b = heat::driven(modes, celsius(4), dense, hours(0), hours(8)).core;
    for (const History::Point& point : b.points) {
        CHECK(near_abs(a.at(point.at).celsius(), point.value.celsius(), 0.01));
    }
    CHECK(near_abs(a.points.back().value.celsius(), b.points.back().value.celsius(), 1e-8));
}

TEST_CASE("the bath of a whole run, fed back, gives the core of that run") {
    heat::BoxHeat box;
    box.loss = units::HeatLoss{1.2};
    box.liner = units::HeatCapacity{8000};
    box.open_surface = units::Area{0.15};
    History outside;
    outside.add(Duration{0}, celsius(8));
    outside.add(hours(12), celsius(-5));
    for (const double size : {30.0, 85.0}) {
        CAPTURE(size);
        heat::Bath bath(box, units::litres(36), celsius(68), outside);
        heat::FoodInBath food;
        const heat::Modes modes = modes_of(facts::Shape::round, size);
        food.modes = modes;
        food.capacity = units::HeatCapacity{12600};
        food.start = celsius(4);
        food.colder = units::kelvins(0);
        bath.advance_to(minutes(10));
        const std::size_t index = bath.put_in(std::move(food));
        bath.advance_to(hours(5));
        bath.open_lid(minutes(3));
        bath.pour(units::litres(4), units::litres(4), celsius(92));
        bath.advance_to(hours(11));
        const History core = heat::driven(modes, celsius(4), bath.bath_history(), minutes(10), hours(11)).core;
        double worst = 0.0;
        for (const History::Point& point : bath.core_history(index).points) {
            worst = std::max(worst, std::abs((core.at(point.at) - point.value).si()));
        }
        CAPTURE(worst);
        CHECK(worst < 0.01);
    }
}

TEST_CASE("cores of two baths add up to the core of their sum") {
    const heat::Modes modes = modes_of(facts::Shape::slab, 40);
    History a;
    a.add(hours(0), celsius(60));
    a.add(hours(1), celsius(52));
    a.add(hours(1), celsius(64));
    a.add(hours(4), celsius(57));
    History b;
    b.add(hours(0), celsius(3));
    b.add(hours(2), celsius(-4));
    b.add(hours(4), celsius(5));
    History sum;
    for (const double h : {0.0, 1.0}) {
        sum.add(hours(h), celsius(h == 0.0 ? 63 : 52 - 0.5));
    }
    sum.add(hours(1), celsius(64 - 0.5));
    sum.add(hours(2), celsius(64 - 7.0 / 3.0 - 4));
    sum.add(hours(4), celsius(62));
    const History ca = heat::driven(modes, celsius(4), a, hours(0), hours(4)).core;
    const History cb = heat::driven(modes, celsius(-1), b, hours(0), hours(4)).core;
    const History cs = heat::driven(modes, celsius(3), sum, hours(0), hours(4)).core;
    for (const double h : {0.5, 1.0, 2.0, 4.0}) {
        CHECK(near_abs(ca.at(hours(h)).celsius() + cb.at(hours(h)).celsius(), cs.at(hours(h)).celsius(), 0.01));
    }
    CHECK(near_abs(ca.points.back().value.celsius() + cb.points.back().value.celsius(),
                   cs.points.back().value.celsius(), 1e-8));
}

TEST_CASE("a jump of the bath moves no core at once") {
    const heat::Modes modes = modes_of(facts::Shape::round, 60);
    History bath;
    bath.add(hours(0), celsius(62));
    bath.add(hours(3), celsius(58));
    bath.add(hours(3), celsius(80));
    bath.add(hours(3), celsius(48));
    bath.add(hours(5), celsius(48));
    const History core = heat::driven(modes, celsius(4), bath, hours(0), hours(5)).core;
    for (std::size_t i = 1; i < core.points.size(); ++i) {
        CHECK(core.points[i].at > core.points[i - 1].at);
        const double step = std::abs((core.points[i].value - core.points[i - 1].value).si());
        CHECK(step < 0.1 + 0.035 * (core.points[i].at - core.points[i - 1].at).si());
    }
    const double before = core.at(hours(3)).celsius();
    CHECK(near_abs(core.at(hours(3) + units::seconds(5)).celsius(), before, 0.05));
}

TEST_CASE("outside its points the bath is constant, and no time is no change") {
    const heat::Modes modes = modes_of(facts::Shape::slab, 40);
    History bath;
    bath.add(hours(2), celsius(60));
    bath.add(hours(3), celsius(55));
    const heat::Driven early = heat::driven(modes, celsius(4), bath, hours(0), hours(2));
    CHECK(near_abs(early.core.points.back().value.celsius(), 60 + heat::core_at(modes, hours(2)) * (4 - 60), 1e-9));
    const heat::Driven late = heat::driven(modes, celsius(4), bath, hours(5), hours(6));
    CHECK(near_abs(late.core.points.back().value.celsius(), 55 + heat::core_at(modes, hours(1)) * (4 - 55), 1e-9));
    const heat::Driven none = heat::driven(modes, celsius(4), bath, hours(2), hours(2));
    CHECK(none.core.points.size() == 1);
    CHECK(none.core.points.front().value == celsius(4));
}
