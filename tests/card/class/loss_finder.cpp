// SPDX-License-Identifier: MIT
// The loss finder against the box test of the program: never a smaller loss, and never larger than its rounding says.
#include "answer/gauge/gauge.hpp"
#include "card/class/class_gauge.hpp"
#include "facts/facts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <regex>

using namespace holdwater;
using namespace holdwater::support;

namespace {

double gauged(const card::LossFinder& finder, units::Temperature air, units::Temperature reading, units::Duration after,
              units::Volume water) {
    answer::GaugeQuestion question;
    question.readings = {{units::Duration{0}, finder.start(), "", {}}, {after, reading, "", {}}};
    question.outside.add(units::Duration{0}, air);
    question.water = water;
    question.reading_error = units::kelvins(0.5);
    question.floor = units::celsius(50);
    const auto made = answer::gauge(question);
    REQUIRE(made.ok());
    return made->loss.likely.si();
}

double step() {
    return facts::facts().value("finder.loss-step");
}
double line() {
    return facts::facts().value("finder.line");
}

}  // namespace

TEST_CASE("at every value that the tables show, the finder is the gauge within one line and one step, never below") {
    const card::LossFinder finder;
    int found = 0;
    int dashes = 0;
    for (std::size_t a = 0; a < finder.airs().size(); ++a) {
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            for (std::size_t h = 0; h < finder.hours().size(); ++h) {
                const auto at = finder.line(a, r, h);
                for (std::size_t v = 0; v < finder.litres().size(); ++v) {
                    const double exact =
                        gauged(finder, finder.airs()[a], finder.readings()[r], finder.hours()[h], finder.litres()[v]);
                    if (!at) {
                        ++dashes;
                        // A dash only where the bath would fall by two thirds in 11 h.
                        const double ratio =
                            (finder.readings()[r] - finder.airs()[a]) / (finder.start() - finder.airs()[a]);
                        CHECK(-units::in_hours(finder.hours()[h]) / std::log(ratio) < 10.0);
                        continue;
                    }
                    ++found;
                    const double printed = finder.loss(*at, v).si();
                    CAPTURE(exact);
                    CAPTURE(printed);
                    CHECK(printed >= exact - 1e-9);
                    CHECK(printed < exact * line() * 1.001 + step());
                }
            }
        }
    }
    CHECK(found > 2000);
    CHECK(dashes > 50);
}

TEST_CASE("between the values of the tables the rules of the sheet never find a better box") {
    const card::LossFinder finder;
    double worst = 0.0;
    int tried = 0;
    for (const double air : {0.0, 3.0, 8.0, 14.0, 19.0, 27.0}) {
        for (const double reading : {60.0, 59.6, 58.3, 57.0, 55.5, 53.2, 51.0}) {
            for (const double hours : {3.0, 3.6, 4.9, 6.0, 7.5, 9.1, 11.5, 16.0}) {
                for (const double litres : {11.0, 18.0, 22.5, 30.0, 36.0, 48.0}) {
                    const card::ClassBox box{units::litres(litres), units::celsius(air), units::celsius(reading),
                                             units::hours(hours)};
                    const double exact = gauged(finder, box.air, box.reading, box.after, box.water);
                    const double ratio = (reading - air) / (finder.start().celsius() - air);
                    if (-hours / std::log(ratio) < 15.0) {
                        continue;  // near the boxes that are none
                    }
                    const card::FoundLoss found = card::found_loss(finder, box);
                    ++tried;
                    CHECK(found.loss.si() >= exact - 1e-9);
                    worst = std::max(worst, (found.loss.si() - step()) / exact);
                }
            }
        }
    }
    CHECK(tried > 1000);
    MESSAGE("between values too large by a factor of at most " << worst);
    CHECK(worst < 1.9);
}

TEST_CASE("lines rise with the fall, with fewer hours and with warmer air; losses with lines and litres") {
    const card::LossFinder finder;
    const auto number = [&](std::size_t a, std::size_t r, std::size_t h) {
        return finder.line(a, r, h).value_or(finder.lines() + 1);
    };
    for (std::size_t a = 0; a < finder.airs().size(); ++a) {
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            for (std::size_t h = 0; h < finder.hours().size(); ++h) {
                CHECK((a == 0 || number(a, r, h) >= number(a - 1, r, h)));
                CHECK((r == 0 || number(a, r, h) >= number(a, r - 1, h)));
                CHECK((h == 0 || number(a, r, h) <= number(a, r, h - 1)));
            }
        }
    }
    for (int l = 1; l <= finder.lines(); ++l) {
        for (std::size_t v = 0; v < finder.litres().size(); ++v) {
            CHECK((l == 1 || finder.loss(l, v) >= finder.loss(l - 1, v)));
            CHECK((v == 0 || finder.loss(l, v) >= finder.loss(l, v - 1)));
        }
    }
    // No row is a weak test.
    CHECK((finder.start() - finder.readings().front()).si() >= facts::facts().value("box-test.weak-fall") - 1e-9);
}

TEST_CASE("the printed tables say what the finder says, and a row in Fahrenheit never stands for a smaller fall") {
    const card::LossFinder finder;
    const auto words =
        words::Words::read(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    for (const units::System system : {units::System::metric, units::System::us, units::System::both}) {
        const auto tables = card::finder_tables(finder, system, *words);
        REQUIRE(tables.size() == finder.airs().size() + 1);
        for (std::size_t a = 0; a < finder.airs().size(); ++a) {
            for (std::size_t r = 0; r < finder.readings().size(); ++r) {
                const auto& row = tables[a].rows[r];
                static const std::regex fahrenheit(R"((\d+)\D*°F)");
                if (std::smatch match; std::regex_search(row.front(), match, fahrenheit)) {
                    CHECK(std::stod(match[1]) >= finder.readings()[r].fahrenheit() - 1e-9);
                }
                for (std::size_t h = 0; h < finder.hours().size(); ++h) {
                    const auto at = finder.line(a, r, h);
                    CHECK(row[h + 1] == (at ? std::to_string(*at) : "–"));
                }
            }
        }
        CHECK(tables.back().rows.size() == static_cast<std::size_t>(finder.lines()));
        CHECK(tables.back().rows.front()[1] == units::written(card::loss_figure(finder.loss(1, 0))));
    }
}
