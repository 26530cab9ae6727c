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
