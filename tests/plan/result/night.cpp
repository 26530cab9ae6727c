// SPDX-License-Identifier: MIT
// Laws of a bath left alone and of the morning rows.
#include "heat/box.hpp"
#include "plan/result/plan.hpp"
#include "support/efforts.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace holdwater;

TEST_CASE("a hotter last reading may be left longer; wind and cold shorten it") {
    const plan::Plan& plan = support::demo_plan("frosty-weekend");
    const plan::Night& night = plan.night;
    REQUIRE(night.unattended.size() > 2);
    for (std::size_t i = 1; i < night.unattended.size(); ++i) {
        CHECK(night.unattended[i].reading < night.unattended[i - 1].reading);
        CHECK(night.unattended[i].longest < night.unattended[i - 1].longest);
    }
    CHECK(plan.interval_rough < plan.interval_calm);
    REQUIRE(night.wake.has_value());
    for (std::size_t i = 0; i < night.curve.size(); ++i) {
        CHECK(night.curve[i].low <= night.curve[i].likely);
        CHECK(night.curve[i].likely <= night.curve[i].high);
    }
}

TEST_CASE("a cooler morning and a longer night are never judged milder") {
    const auto& rows = support::demo_plan("frosty-weekend").night.morning;
    REQUIRE(rows.size() > 4);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        for (std::size_t c = 0; c < rows[r].cells.size(); ++c) {
            CHECK(rows[r].cells[c].below <= rows[r].cells[c].since);
            CHECK(rows[r].cells[c].action != safety::FallAction::none);
            if (c > 0) {
                CHECK(rows[r].cells[c].action >= rows[r].cells[c - 1].action);
            }
            if (r > 0) {
                CHECK(rows[r].cells[c].action >= rows[r - 1].cells[c].action);
            }
        }
    }
    CHECK(rows.back().cells.back().action == safety::FallAction::throw_away);
}

TEST_CASE("a morning row counts the whole time that this box may have been below, since the last good reading") {
    const plan::Plan& plan = support::demo_plan("frosty-weekend");
    const trip::Box& box = plan.trip->boxes.front();
    // A lower bound by hand: the likely box, its water alone, in the coldest air; the slowest of its kind takes longer.
    const double capacity = units::in_litres(box.water) * 0.98 * 4180.0;
    const double loss = plan.loss.likely.si() * heat::wind_factor(heat::wind_position(plan.trip->weather.wind));
    const double air = plan.night.air.celsius();
    const double floor = plan.levels.floor.celsius();
    int long_ones = 0;
    for (const plan::MorningRow& row : plan.night.morning) {
        const double reading = row.reading.celsius();
        const double fallen = reading < floor ? capacity / loss * std::log((floor - air) / (reading - air)) : 0.0;
        for (const plan::MorningRow::Cell& cell : row.cells) {
            CAPTURE(reading);
            CHECK(cell.below.si() >= std::min(cell.since.si(), fallen) - 60.0);
            long_ones += std::min(cell.since.si(), fallen) > 3600.0 ? 1 : 0;
        }
    }
    CHECK(long_ones > 3);
    // What stands for every lower reading too may have fallen at once.
    for (const plan::MorningRow::Cell& cell : plan.night.morning.back().cells) {
        CHECK(cell.below == cell.since);
    }
}

TEST_CASE("the last morning row, which stands for everything below it, is thrown away in every demo") {
    for (const char* name : {"frosty-weekend", "paddling-day", "class-day"}) {
        CAPTURE(name);
        const auto& rows = support::demo_plan(name).night.morning;
        REQUIRE_FALSE(rows.empty());
        for (const plan::MorningRow::Cell& cell : rows.back().cells) {
            CHECK(cell.action == safety::FallAction::throw_away);
        }
    }
}

TEST_CASE("Night lists no reading that the box will not show") {
    std::size_t rows = 0;
    for (const char* name : {"frosty-weekend", "trail-crew", "hut-night", "paddling-day", "class-day"}) {
        CAPTURE(std::string(name));
        const plan::Plan& plan = support::demo_plan(name);
        // Once the food has taken its heat; after that only a top-up lifts it, to the mark.
        units::Temperature highest = units::celsius(std::ceil(plan.fill.after_food.high.celsius()));
        if (!plan.top_ups.empty()) {
            highest = std::max(highest, plan.levels.mark);
        }
        for (const plan::Unattended& row : plan.night.unattended) {
            CHECK(row.reading <= highest);
            ++rows;
        }
    }
    CHECK(rows > 10);
}
