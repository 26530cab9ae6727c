// SPDX-License-Identifier: MIT
// The demos against the facts that the program really holds.
#include "facts/facts.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("the demos and the template only use kinds of food that the facts list") {
    trip::Known real;
    for (const facts::FoodKind& food : facts::facts().foods()) {
        real.kinds.push_back(food.key);
    }
    REQUIRE(!real.kinds.empty());
    for (const std::string name : {"trail-crew", "hut-night", "paddling-day", "class-day", "template"}) {
        const std::string file = name + ".toml";
        const auto result = trip::read_trip(read_text(trip_layouts() / file), file, files_in(trip_layouts()), real);
        CHECK(result.ok());
        CHECK(lines(result.problems()).empty());
    }
}
