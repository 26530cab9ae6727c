// SPDX-License-Identifier: MIT
#include "units/print.hpp"

#include <doctest/doctest.h>

using namespace holdwater::units;

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

TEST_CASE("rounding keeps a multiple where it is") {
    CHECK(round_to(0.3, 0.1, Toward::up) < 0.3 + 1e-12);
    CHECK(round_to(2.0, 0.5, Toward::up) == 2.0);
    CHECK(round_to(2.01, 0.5, Toward::up) == 2.5);
    CHECK(round_to(2.49, 0.5, Toward::down) == 2.0);
    CHECK(number(-0.04, 1) == "0.0");
}
