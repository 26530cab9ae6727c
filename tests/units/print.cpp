// SPDX-License-Identifier: MIT
#include "units/print.hpp"

#include <doctest/doctest.h>

#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <random>
#include <string>
#include <vector>

using namespace holdwater::units;

namespace {

/// Doubles of every size and sign, the last and the infinite ones, and a thousand bit patterns.
std::vector<double> any_doubles() {
    std::vector<double> values{0.0, -0.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::max(),
                               std::numeric_limits<double>::denorm_min()};
    for (int exponent = -310; exponent <= 308; ++exponent) {
        values.push_back(1.37 * std::pow(10.0, exponent));
    }
    std::mt19937_64 dice;
    for (int i = 0; i < 1000; ++i) {
        values.push_back(std::bit_cast<double>(dice()));
    }
    const std::size_t count = values.size();
    for (std::size_t i = 0; i < count; ++i) {
        values.push_back(-values[i]);
    }
    return values;
}

/// Parts of a printed value, which a no-break space keeps together.
std::vector<std::string> parts_of(const std::string& text) {
    constexpr std::string_view no_break_space = "\u00A0";
    std::vector<std::string> parts;
    std::size_t from = 0;
    for (std::size_t at = text.find(no_break_space); at != std::string::npos; at = text.find(no_break_space, from)) {
        parts.push_back(text.substr(from, at - from));
        from = at + no_break_space.size();
    }
    parts.push_back(text.substr(from));
    return parts;
}

/// "1 h 30", "45 min" in minutes.
double minutes_said(const std::string& text) {
    const std::vector<std::string> parts = parts_of(text);
    const double first = std::stod(parts[0]);
    if (parts[1] == "min") {
        return first;
    }
    const double rest = parts.size() > 2 ? std::stod(parts[2]) : 0.0;
    return first * 60.0 + (text.front() == '-' ? -rest : rest);
}

/// "3 3/8 in", "1/2 in", "-2 in" in inches.
double inches_said(const std::string& text) {
    double value = 0.0;
    for (const std::string& part : parts_of(text)) {
        if (const auto slash = part.find('/'); slash != std::string::npos) {
            value += std::abs(std::stod(part)) / std::stod(part.substr(slash + 1));
        } else if (part != "in") {
            value += std::abs(std::stod(part));
        }
    }
    return text.front() == '-' ? -value : value;
}

/// Within one unit in the last place that a double of this size has, or a unit of what was printed.
bool says(double said, double value, double unit) {
    return said == value || std::abs(said - value) <= unit + 1e-15 * std::abs(value) ||
           (std::isnan(said) && std::isnan(value));
}

}  // namespace

TEST_CASE("temperatures round both systems to the same side") {
    CHECK(print(celsius(54.4), System::both, {1.0, Toward::up}) == "55\u00A0°C (131\u00A0°F)");
    CHECK(print(celsius(54.4), System::both, {1.0, Toward::down}) == "54\u00A0°C (129\u00A0°F)");
    CHECK(print(celsius(63.0), System::metric) == "63\u00A0°C");
    CHECK(print(celsius(63.0), System::us, {1.0, Toward::up}) == "146\u00A0°F");
    CHECK(print(celsius(-0.2), System::metric) == "0\u00A0°C");
}

TEST_CASE("US units first print the same two, each on the safe side of the truth") {
    CHECK(print(celsius(54.4), System::us_first, {1.0, Toward::up}) == "130\u00A0°F (55\u00A0°C)");
    CHECK(print(celsius(54.4), System::us_first, {1.0, Toward::down}) == "129\u00A0°F (54\u00A0°C)");
    CHECK(print(millimetres(85), System::us_first) == "3\u00A03/8\u00A0in (85\u00A0mm)");
    CHECK(print(litres(10.2), System::us_first, {0.5, Toward::up}) == "11.0\u00A0qt (10.5\u00A0L)");
    CHECK(print(kilograms(1.8), System::us_first) == "4.0\u00A0lb (1.8\u00A0kg)");
    for (const System system : {System::both, System::us_first}) {
        for (double truth = -12.3; truth < 101.0; truth += 0.37) {
            for (const Toward toward : {Toward::up, Toward::down}) {
                CAPTURE(truth);
                const std::string text = print(celsius(truth), system, {1.0, toward});
                const double first = std::stod(text);
                const double second = std::stod(text.substr(text.find('(') + 1));
                const double c = system == System::both ? first : second;
                const double f = system == System::both ? second : first;
                const double sign = toward == Toward::up ? 1.0 : -1.0;
                CHECK(sign * (c - truth) >= -1e-9);
                CHECK(sign * (f - celsius(truth).fahrenheit()) >= -1e-9);
                CHECK(sign * (first - (system == System::both ? truth : celsius(truth).fahrenheit())) < 1.0);
            }
        }
    }
}

TEST_CASE("each system has a name of its own, one that stands first, and another where two are printed") {
    for (const std::string_view name : system_names()) {
        CHECK(name_of(system_named(name)) == name);
    }
    CHECK(system_names().size() == 4);
    CHECK(first_of(System::us_first) == System::us);
    CHECK(second_of(System::us_first) == System::metric);
    CHECK(first_of(System::both) == System::metric);
    CHECK(second_of(System::both) == System::us);
    CHECK(two(System::us_first));
    CHECK_FALSE(two(System::us));
}

TEST_CASE("lengths, volumes, masses") {
    CHECK(print(millimetres(85), System::both) == "85\u00A0mm (3\u00A03/8\u00A0in)");
    CHECK(print(millimetres(12.7), System::us) == "1/2\u00A0in");
    CHECK(print(litres(10.2), System::metric, {0.5, Toward::up}) == "10.5\u00A0L");
    CHECK(print(kilograms(1.8), System::both) == "1.8\u00A0kg (4.0\u00A0lb)");
}

TEST_CASE("durations read as people say them") {
    CHECK(print(minutes(45)) == "45\u00A0min");
    CHECK(print(hours(2)) == "2\u00A0h");
    CHECK(print(minutes(135)) == "2\u00A0h\u00A015");
    CHECK(print(seconds(59 * 60 + 30), Toward::up) == "1\u00A0h");
    CHECK(print(seconds(61), Toward::down) == "1\u00A0min");
}

TEST_CASE("below nought, an hour and a half and an inch and a half are said as above it, with a minus") {
    CHECK(print(minutes(-90)) == "-1\u00A0h\u00A030");
    CHECK(print(minutes(-45)) == "-45\u00A0min");
    CHECK(print(millimetres(-38.1), System::us) == "-1\u00A01/2\u00A0in");
    CHECK(print(millimetres(-3.175), System::us) == "-1/8\u00A0in");
}

TEST_CASE("law: any double prints, and what is printed says it") {
    for (const double value : any_doubles()) {
        CAPTURE(value);
        for (const Toward toward : {Toward::nearest, Toward::up, Toward::down}) {
            CHECK(says(minutes_said(print(seconds(value), toward)), value / 60.0, 1.0));
            const Length length{value};
            CHECK(says(inches_said(print(length, System::us, {1.0, toward})), in_inches(length), 0.125));
            CHECK(says(std::stod(print(length, System::metric, {1.0, toward})), in_millimetres(length), 1.0));
            CHECK(says(std::stod(print(celsius(value), System::metric, {1.0, toward})), value, 1.0));
            CHECK(says(std::stod(print(Mass{value}, System::metric, {0.1, toward})), value, 0.1));
            CHECK_FALSE(print(celsius(value), System::both, {0.5, toward}).empty());
            CHECK_FALSE(print(Volume{value}, System::us_first, {0.5, toward}).empty());
            CHECK(says(round_to(value, 0.5, toward), value, 0.5));
        }
    }
}

TEST_CASE("rounding keeps a multiple where it is") {
    CHECK(round_to(0.3, 0.1, Toward::up) < 0.3 + 1e-12);
    CHECK(round_to(2.0, 0.5, Toward::up) == 2.0);
    CHECK(round_to(2.01, 0.5, Toward::up) == 2.5);
    CHECK(round_to(2.49, 0.5, Toward::down) == 2.0);
    CHECK(number(-0.04, 1) == "0.0");
}

TEST_CASE("a figure is written with the decimal mark it is asked for, a bare one without unit") {
    const Numerals comma{',', false};
    CHECK(written(amount(litres(2.5), System::both, {0.5}), comma) == "2,5\u00A0L (2,5\u00A0qt)");
    CHECK(written(amount(celsius(63.0), System::both).without_units(), comma) == "63 (145)");
    CHECK(written(amount(millimetres(85), System::us), comma) == "3\u00A03/8\u00A0in");
    CHECK(written(decimal(-0.04, 1), comma) == "0,0");
    CHECK(written(significant(12.50), comma) == "12,5");
    CHECK(written(significant(0.12345, 3, "mm")) == "0.123\u00A0mm");
    CHECK(written(figure(2.31, 0.1, Toward::up, "L"), comma) == "2,4\u00A0L");
    CHECK(print_tight(minutes(135)) == "2h15");
    CHECK(print_tight(minutes(45)) == "45min");
    const LocalTime afternoon = LocalTime::from_civil(2027, 10, 15, 16, 5);
    CHECK(written(afternoon, {'.', true}) == "4:05 pm");
    CHECK(written(afternoon, comma) == "16:05");
}
