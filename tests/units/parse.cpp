// SPDX-License-Identifier: MIT
#include "units/parse.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <clocale>
#include <string>

using namespace holdwater;
using support::near_rel;

namespace {

template <class Q>
double si(const char* text) {
    const auto q = units::parse<Q>(text);
    REQUIRE_MESSAGE(q.ok(), text);
    return q->si();
}

template <class Q>
std::string refusal(const char* text) {
    const auto q = units::parse<Q>(text);
    REQUIRE_MESSAGE(!q.ok(), text);
    return std::string(q.problems().front().code.text()) + ": " + q.problems().front().message + " (" +
           q.problems().front().hint + ")";
}

}  // namespace

TEST_CASE("lengths in both systems") {
    // Inch, foot, pound and US gallon are exact by definition (from memory: international yard and pound agreement
    // 1959).
    CHECK(near_rel(si<units::Length>("85 mm"), 0.085, 1e-15));
    CHECK(near_rel(si<units::Length>("8.5 cm"), 0.085, 1e-15));
    CHECK(near_rel(si<units::Length>("3 1/4 in"), 0.08255, 1e-14));
    CHECK(near_rel(si<units::Length>("1/2 in"), 0.0127, 1e-14));
    CHECK(near_rel(si<units::Length>("1 ft"), 0.3048, 1e-15));
    CHECK(near_rel(si<units::Length>("  2in "), 0.0508, 1e-15));
}

TEST_CASE("masses, volumes, times, shares") {
    CHECK(near_rel(si<units::Mass>("1 lb"), 0.45359237, 1e-15));
    CHECK(near_rel(si<units::Mass>("8 oz"), 0.226796185, 1e-14));
    CHECK(near_rel(si<units::Volume>("1 gal"), 3.785411784e-3, 1e-14));
    CHECK(near_rel(si<units::Volume>("1 qt"), 0.946352946e-3, 1e-14));
    CHECK(near_rel(si<units::Volume>("1 cup"), 0.2365882365e-3, 1e-14));
    CHECK(near_rel(si<units::Duration>("1 1/2 h"), 5400, 1e-15));
    CHECK(near_rel(si<units::Fraction>("20 %"), 0.2, 1e-15));
    CHECK(near_rel(si<units::Pressure>("812 hPa"), 81200, 1e-15));
    CHECK(near_rel(si<units::HeatLoss>("0.9 W/K"), 0.9, 1e-15));
    CHECK(near_rel(si<units::Diffusivity>("1.3e-7 m2/s"), 1.3e-7, 1e-15));
    CHECK(near_rel(si<units::ThermalResistance>("0.01 m2 K/W"), 0.01, 1e-15));
}

TEST_CASE("a temperature and a difference are two things") {
    CHECK(units::parse<units::Temperature>("63 C")->celsius() == 63.0);
    CHECK(support::near_abs(units::parse<units::Temperature>("212 F")->celsius(), 100.0, 1e-12));
    CHECK(support::near_abs(units::parse<units::Temperature>("-4 F")->celsius(), -20.0, 1e-12));
    CHECK(units::parse<units::TemperatureDifference>("2 K")->si() == 2.0);
    CHECK(units::parse<units::TemperatureDifference>("1 C")->si() == 1.0);
    CHECK(support::near_abs(units::parse<units::TemperatureDifference>("9 F")->si(), 5.0, 1e-12));
    CHECK(refusal<units::Temperature>("2 K") ==
          "unit-of-another-kind: \"2 K\" is a temperature difference (a temperature is due here, such as \"63 C\")");
}

TEST_CASE("temperatures are read as they are printed, and a degree sign stands before C and F only") {
    CHECK(units::parse<units::Temperature>("60°C")->celsius() == 60.0);
    CHECK(units::parse<units::Temperature>("60\u00A0°C")->celsius() == 60.0);
    CHECK(support::near_abs(units::parse<units::Temperature>("140 °F")->celsius(), 60.0, 1e-12));
    CHECK(units::parse<units::TemperatureDifference>("1 °C")->si() == 1.0);
    for (const char* bad : {"60 °", "60 °K", "60 °°C", "60 C°"}) {
        CAPTURE(bad);
        CHECK_FALSE(units::parse<units::Temperature>(bad).ok());
    }
    CHECK_FALSE(units::parse<units::Length>("60 °m").ok());
}

TEST_CASE("refusals say what would be right") {
    CHECK(refusal<units::Length>("85") ==
          "unit-missing: \"85\" has no unit (a length is written with one of: mm, cm, m, in, ft)");
    CHECK(refusal<units::Length>("85 kg") ==
          "unit-of-another-kind: \"85 kg\" is a mass (a length is due here, such as \"85 mm\")");
    CHECK(refusal<units::Length>("85 mmm") ==
          "unit-unknown: \"mmm\" is not a unit that is known (did you mean \"mm\"?)");
    CHECK(refusal<units::Length>("8,5 mm") == "decimal-comma: \"8,5 mm\" has a decimal comma (write a decimal point)");
    for (const char* bad : {"", "  ", "mm", "x mm", "1/0 in", "3 1 in", "1//2 in", "nan mm", "inf mm", "- mm",
                            "1/-2 in", "+-5 mm", "-+5 mm", "++5 mm", "--5 mm"}) {
        CAPTURE(bad);
        CHECK_FALSE(units::parse<units::Length>(bad).ok());
    }
}

TEST_CASE("the locale is not asked") {
    const char* before = std::setlocale(LC_ALL, nullptr);
    const std::string kept = before;
    std::setlocale(LC_ALL, "de_DE.UTF-8");
    CHECK(near_rel(si<units::Mass>("1.8 kg"), 1.8, 1e-15));
    std::setlocale(LC_ALL, kept.c_str());
}

TEST_CASE("times of day") {
    CHECK(units::parse_clock("06:30")->second_of_day == 6 * 3600 + 30 * 60);
    CHECK(units::parse_clock("6:30")->second_of_day == 6 * 3600 + 30 * 60);
    CHECK(units::parse_clock("23:59")->second_of_day == 86340);
    for (const char* bad : {"24:00", "6.30", "6:3", "06:60", "0630", ":30", "aa:bb", "", "06:30:00", "-1:00", "-0:30",
                            "22:-0", "+6:30", "6:+3", " 6: 3"}) {
        CAPTURE(bad);
        CHECK_FALSE(units::parse_clock(bad).ok());
    }
}
