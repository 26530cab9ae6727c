// SPDX-License-Identifier: MIT
// The loss finder against the box test of the program: never a smaller loss, and never larger than its rounding says.
#include "card/class/loss_finder.hpp"

#include "card/class/class_gauge.hpp"
#include "card/class/loss_tests.hpp"
#include "card/figures/exercise_figures.hpp"
#include "facts/facts.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <regex>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE(
    "at every value that the table shows, the finder is the gauge but for the rounding of its number, never below") {
    const card::LossFinder finder;
    int compared = 0;
    for (std::size_t a = 0; a < finder.airs().size(); ++a) {
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            const int number = finder.fall_number(a, r);
            for (const double hours : {2.0, 3.5, 5.0, 8.0, 12.0, 16.0}) {
                for (const double litres : {8.0, 15.0, 28.0, 45.0, 70.0}) {
                    const auto found =
                        gauged(finder, finder.airs()[a].celsius(), finder.readings()[r].celsius(), hours, litres);
                    if (!found) {
                        continue;
                    }
                    const double exact = *found;
                    const double by_number = finder.loss(number, units::hours(hours), units::litres(litres)).si();
                    CAPTURE(exact);
                    CAPTURE(by_number);
                    CHECK(by_number >= exact - 1e-9);
                    CHECK(by_number <= exact * number / (number - 1.0) + 1e-9);
                    ++compared;
                }
            }
        }
    }
    CHECK(compared > 2000);
}

TEST_CASE("between the values of the table the rules of the sheet never find a better box") {
    const card::LossFinder finder;
    double worst = 0.0;
    int tried = 0;
    for (const double air : {0.0, 3.0, 8.0, 14.0, 19.0, 27.0}) {
        for (const double reading : {60.0, 59.6, 58.3, 57.0, 55.5, 53.2, 51.0}) {
            for (const double hours : {3.0, 3.6, 4.9, 6.0, 7.5, 9.1, 11.5, 16.0}) {
                for (const double litres : {11.0, 18.0, 22.5, 30.0, 36.0, 48.0}) {
                    const card::ClassBox box{units::litres(litres), units::celsius(air), units::celsius(reading),
                                             units::hours(hours)};
                    const double exact = gauged(finder, air, reading, hours, litres).value();
                    const card::FoundLoss found = card::found_loss(finder, box);
                    ++tried;
                    CHECK(found.loss.si() >= exact - 1e-9);
                    worst = std::max(worst, (found.loss.si() - loss_step()) / exact);
                }
            }
        }
    }
    CHECK(tried > 2000);
    MESSAGE("between values too large by a factor of at most " << worst);
    CHECK(worst < 1.6);  // 1.9 with a table of hours and litres besides
}

TEST_CASE("fall numbers rise with the fall and with warmer air; losses with them, with litres and with fewer hours") {
    const card::LossFinder finder;
    for (std::size_t a = 0; a < finder.airs().size(); ++a) {
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            CHECK((a == 0 || finder.fall_number(a, r) > finder.fall_number(a - 1, r)));
            CHECK((r == 0 || finder.fall_number(a, r) > finder.fall_number(a, r - 1)));
        }
    }
    const auto loss = [&](double fall, double hours, double litres) {
        return finder.loss(fall, units::hours(hours), units::litres(litres)).si();
    };
    CHECK(loss(120, 5, 30) > loss(100, 5, 30));
    CHECK(loss(120, 4, 30) > loss(120, 5, 30));
    CHECK(loss(120, 5, 40) > loss(120, 5, 30));
    CHECK(near_rel(loss(240, 5, 30), 2.0 * loss(120, 5, 30), 1e-9));
    // No row is a weak test.
    CHECK((finder.start() - finder.readings().front()).si() >= facts::facts().value("box-test.weak-fall") - 1e-9);
}

TEST_CASE("the printed table says what the finder says, and a row in Fahrenheit never stands for a smaller fall") {
    const card::LossFinder finder;
    for (const units::System system : {units::System::metric, units::System::us, units::System::both}) {
        card::ClassWish wanted = wish();
        wanted.units = system;
        const auto frame = frame_of(wanted);
        card::FigureList figures({frame->plan(), english()});
        card::add_sheet_figures(figures, *frame, finder);
        const card::Table table = card::finder_table(finder, figures.of("sheets"), english());
        REQUIRE(table.columns.size() == finder.airs().size() + 1);
        REQUIRE(table.rows.size() == finder.readings().size());
        static const std::regex fahrenheit(R"((\d+)\D*°F)");
        for (std::size_t r = 0; r < finder.readings().size(); ++r) {
            const auto& row = table.rows[r];
            if (std::smatch match; std::regex_search(row.front(), match, fahrenheit)) {
                CHECK(std::stod(match[1]) >= finder.readings()[r].fahrenheit() - 1e-9);
            }
            for (std::size_t a = 0; a < finder.airs().size(); ++a) {
                CHECK(row[a + 1] == std::to_string(finder.fall_number(a, r)));
            }
        }
        for (std::size_t a = 0; a < finder.airs().size(); ++a) {
            if (std::smatch match; std::regex_search(table.columns[a + 1].head, match, fahrenheit)) {
                CHECK(std::stod(match[1]) <= finder.airs()[a].fahrenheit() + 1e-9);
            }
        }
    }
}
