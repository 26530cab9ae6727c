// SPDX-License-Identifier: MIT
// Published limits are printed as their publishers pair the two systems.
#include "facts/published.hpp"

#include "facts/facts.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using units::System;

namespace {

std::string printed(units::Temperature t, System system, units::Toward otherwise = units::Toward::up) {
    std::string text = units::written(facts::published(t, system, otherwise));
    for (std::size_t at = text.find("\u00A0"); at != std::string::npos; at = text.find("\u00A0")) {
        text.replace(at, std::string("\u00A0").size(), " ");
    }
    return text;
}

struct Pair {
    double celsius;
    const char* c;
    const char* f;
};

// Copied from the publications, not from the facts.
constexpr Pair pairs[] = {{5, "5 °C", "41 °F"},    {21, "21 °C", "70 °F"},  {54.4, "54.4 °C", "130 °F"},
                          {57, "57 °C", "135 °F"}, {60, "60 °C", "140 °F"}, {63, "63 °C", "145 °F"},
                          {70, "70 °C", "158 °F"}, {71, "71 °C", "160 °F"}, {74, "74 °C", "165 °F"},
                          {75, "75 °C", "167 °F"}, {82, "82 °C", "180 °F"}};

}  // namespace

TEST_CASE("each published pair, in every system") {
    for (const Pair& pair : pairs) {
        CAPTURE(pair.celsius);
        const std::string c = pair.c;
        const std::string f = pair.f;
        for (const units::Toward toward : {units::Toward::up, units::Toward::down, units::Toward::nearest}) {
            CHECK(printed(units::celsius(pair.celsius), System::both, toward) == c + " (" + f + ")");
            CHECK(printed(units::celsius(pair.celsius), System::us_first, toward) == f + " (" + c + ")");
            CHECK(printed(units::celsius(pair.celsius), System::metric, toward) == c);
            CHECK(printed(units::celsius(pair.celsius), System::us, toward) == f);
        }
        // What a user wrote in °F is the same limit.
        const units::Temperature typed = units::fahrenheit(std::stod(f));
        CHECK(printed(typed, System::both) == c + " (" + f + ")");
    }
    CHECK(facts::facts().printed_pairs().size() == std::size(pairs));
}

TEST_CASE("a table in °F that was read in °C keeps its decimal and its °F") {
    CHECK(printed(units::celsius(57.2), System::both) == "57.2 °C (135 °F)");
    CHECK(printed(units::celsius(62.8), System::both) == "62.8 °C (145 °F)");
    CHECK(printed(units::celsius(62.8), System::us) == "145 °F");
}

TEST_CASE("what no publisher pairs goes to the side that is asked for") {
    CHECK(facts::printed_pair(units::celsius(63.2)) == nullptr);
    CHECK(facts::printed_pair(units::celsius(65)) == nullptr);
    CHECK(printed(units::celsius(63.2), System::both) == "64 °C (148 °F)");
    CHECK(printed(units::celsius(63.2), System::us) == "146 °F");
    CHECK(printed(units::celsius(4.4), System::both, units::Toward::down) == "4 °C (39 °F)");
}
