// SPDX-License-Identifier: MIT
// The box: its loss from readings, what the wind does, the open surface, the liner.
#include "heat/box.hpp"

#include "facts/facts.hpp"
#include "heat/water.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

using namespace holdwater;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::hours;
using units::litres;

namespace {

/// Readings of a box that loses `loss`, by the bath engine itself.
heat::BoxTest run(double loss, std::vector<double> when, double start = 64, double outside = 8, double liner = 4000) {
    units::History air;
    air.add(units::Duration{0}, celsius(outside));
    heat::Bath bath({units::HeatLoss{loss}, units::HeatCapacity{liner}, units::Area{0.15}}, litres(30), celsius(start),
                    air);
    heat::BoxTest test;
    for (const double h : when) {
        bath.advance_to(hours(h));
        test.readings.push_back({hours(h), bath.temperature()});
    }
    test.water = litres(30);
    test.outside = celsius(outside);
    test.liner = units::HeatCapacity{liner};
    test.reading_error = units::kelvins(0.5);
    return test;
}

std::string code(const heat::BoxTest& test) {
    const auto result = heat::loss_from(test);
    return result.ok() ? "" : std::string(result.problems().front().code.text());
}

}  // namespace

TEST_CASE("the loss that the bath was run with comes back, from two readings or many") {
    for (const double loss : {0.3, 0.7, 1.0, 1.8}) {
        for (const auto& when : {std::vector<double>{0, 3}, {0, 1, 2, 5, 9}, {0.5, 4}}) {
            CAPTURE(loss);
            CAPTURE(when.size());
            auto test = run(loss, when);
            const auto found = heat::loss_from(test);
            REQUIRE(found.ok());
            const double tolerance = when.front() > 0 ? 2e-3 : 1e-4;  // density at the first reading
            CHECK(near_rel(found->likely.si(), loss, tolerance));
            CHECK(found->low < found->likely);
            CHECK(found->likely < found->high);
        }
    }
}

TEST_CASE("the band: never under the spread, wider with the reading error and with less fall") {
    const facts::Spread& least = facts::facts().spread("box-loss");
    auto test = run(1.0, {0, 8});
    test.reading_error = units::kelvins(0);
    auto exact = heat::loss_from(test);
    REQUIRE(exact.ok());
    CHECK(near_rel(exact->low / exact->likely, least.low, 1e-9));
    CHECK(near_rel(exact->high / exact->likely, least.high, 1e-9));
    double last = exact->high / exact->likely;
    for (const double error : {4.0, 8.0, 16.0}) {
        test.reading_error = units::kelvins(error);
        const auto wide = heat::loss_from(test);
        REQUIRE(wide.ok());
        CHECK(wide->high / wide->likely > last);
        CHECK(wide->low.si() > 0.0);
        CHECK(near_rel(wide->likely.si(), exact->likely.si(), 1e-12));
        last = wide->high / wide->likely;
    }
    test = run(1.0, {0, 1});
    const auto brief = heat::loss_from(test);
    REQUIRE(brief.ok());
    CHECK(brief->weak);
    CHECK_FALSE(exact->weak);
}

TEST_CASE("the band of two readings is the one worked out by hand") {
    // 64 -> 57.5 C in 4 h at 8 C outside: slope ln(56/49.5)/4 h; each reading 0.5 K (95 %).
    heat::BoxTest test;
    test.readings = {{hours(0), celsius(64)}, {hours(4), celsius(57.5)}};
    test.water = litres(36);
    test.outside = celsius(8);
    test.liner = units::HeatCapacity{0};
    test.reading_error = units::kelvins(0.5);
    const auto found = heat::loss_from(test);
    REQUIRE(found.ok());
    const double slope = std::log(56.0 / 49.5) / 14400;
    const double capacity = 0.036 * heat::water_density(celsius(64)).si() * heat::water_specific_heat().si();
    CHECK(near_rel(found->likely.si(), slope * capacity, 1e-9));
    CHECK(near_rel(found->time_constant.si(), 1 / slope, 1e-9));
    const double share = std::hypot(0.5 / 56, 0.5 / 49.5) / 14400 / slope * 1.645 / 1.96;
    CHECK(near_rel(found->high.si(), slope * capacity * std::max(1.12, 1 + share), 1e-9));
}

TEST_CASE("tests that say nothing are refused by name") {
    auto good = run(1.0, {0, 3});
    CHECK(code(good).empty());
    auto test = good;
    test.readings.resize(1);
    CHECK(code(test) == "too-few-readings");
    test.readings.clear();
    CHECK(code(test) == "too-few-readings");
    test = good;
    std::swap(test.readings[0], test.readings[1]);
    CHECK(code(test) == "times-not-rising");
    test = good;
    test.readings[1].after = test.readings[0].after;
    CHECK(code(test) == "times-not-rising");
    test = good;
    test.outside = celsius(70);
    CHECK(code(test) == "bath-not-above-outside");
    test = good;
    test.readings[1].bath = test.readings[0].bath;
    CHECK(code(test) == "bath-not-falling");
    test.readings[1].bath = celsius(80);
    CHECK(code(test) == "bath-not-falling");
    test = good;
    test.water = litres(0);
    test.liner = units::HeatCapacity{0};
    CHECK(code(test) == "nothing-in-the-box");
}

TEST_CASE("wind never helps and rises by class") {
    CHECK(heat::wind_factor(0.0) == 1.0);
    CHECK(heat::wind_factor(-0.5) == 1.0);
    double last = 1.0;
    for (double p = 0.25; p <= 2.5; p += 0.25) {
        CAPTURE(p);
        CHECK(heat::wind_factor(p) > last);
        last = heat::wind_factor(p);
    }
    CHECK(heat::wind_factor(heat::wind_position(facts::Wind::breezy)) == facts::facts().value("wind.breezy"));
    CHECK(heat::wind_factor(heat::wind_position(facts::Wind::windy)) == facts::facts().value("wind.windy"));
    CHECK(heat::wind_position(facts::Wind::still) == 0.0);
    // No less than the outer film of a thin foam wall says: U 1.28 W/m2/K with 9.37 -> 34 W/m2/K outside.
    CHECK(heat::wind_factor(2.0) > 1.0 / 1.28 / (1.0 / 1.28 - 1.0 / 9.37 + 1.0 / 34.0));
}

TEST_CASE("open surface: the rows of the table, in between, and beyond") {
    // open-tank-table, read in a copy: surface total at 15.6 C air.
    const struct {
        double water, total;
    } rows[] = {{43.3, 1041}, {48.9, 1483}, {54.4, 1940}, {60.0, 2587}, {65.6, 3281}, {71.1, 4133},
                {76.7, 5095}, {82.2, 6309}, {87.8, 7729}, {93.3, 9464}, {98.9, 11357}};
    for (const auto& row : rows) {
        CAPTURE(row.water);
        CHECK(near_abs(heat::open_surface_loss(celsius(row.water), celsius(15.6)), row.total, 1.5));
    }
    double last = -1.0;
    for (double t = 0; t <= 100; t += 0.5) {
        CAPTURE(t);
        const double now = heat::open_surface_loss(celsius(t), celsius(15.6));
        CHECK(now >= last);
        CHECK(heat::open_surface_loss(celsius(t), celsius(-10)) >= now);
        last = now;
    }
    CHECK(near_abs(heat::open_surface_loss(celsius(15.6), celsius(15.6)), 0.0, 1e-9));
    // e.4: 30 s of 0.12 m2 at 60 C cost 9.3 kJ, five minutes 93 kJ.
    CHECK(near_abs(heat::open_surface_loss(celsius(60), celsius(15.6)) * 0.12 * 30, 9300, 50));
}

TEST_CASE("liner and volume of a box") {
    const std::array<units::Length, 3> inside = {units::millimetres(540), units::millimetres(290),
                                                 units::millimetres(300)};
    CHECK(near_rel(heat::volume_of(inside).si(), 0.54 * 0.29 * 0.30, 1e-12));
    const double area = 2 * (0.54 * 0.29 + 0.29 * 0.30 + 0.30 * 0.54);
    CHECK(near_rel(heat::liner_of(inside).si() / area,
                   facts::facts().value("liner.shell") + facts::facts().value("liner.foam"), 1e-12));
}
