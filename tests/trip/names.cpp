// SPDX-License-Identifier: MIT
// Every name that stands on a card is asked after; what is wrong with it is reported at its place.
#include "trip/reading.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("the names of trip, food, box, side and what-if are checked, each at its line and column") {
    trip::Known all = known();
    all.name_fault = [](std::string_view name) -> std::optional<problem::Problem> {
        if (name.find("XX") == std::string_view::npos) {
            return std::nullopt;
        }
        return problem::error("name-glyph", "cannot be printed", "leave it out");
    };
    std::string text = small_trip;
    for (std::size_t at = text.find("name = \""); at != std::string::npos; at = text.find("name = \"", at + 8)) {
        text.insert(at + 8, "XX ");
    }
    const std::size_t box = text.find("[[box]]");
    REQUIRE(box != std::string::npos);
    text.insert(box + 7, "\nname = \"XX box\"");
    text += "\n[[side]]\nname = \"XX rice\"\ntakes = \"20 min\"\n[[what_if]]\nname = \"XX storm\"\ncolder = \"5 K\"\n";
    const auto read = trip::read_trip(text, "t.toml", files_in(trip_tests()), all);
    CHECK_FALSE(read.ok());
    int found = 0;
    for (const problem::Problem& one : read.problems()) {
        if (one.code == problem::Code("name-glyph")) {
            ++found;
            CHECK(one.message.starts_with("name \"XX"));
            CHECK(one.place->line > 0);
            CHECK(one.place->column == 8);
        }
    }
    CHECK(found == 5);
    all.name_fault = {};
    const auto without = trip::read_trip(text, "t.toml", files_in(trip_tests()), all);
    CHECK_MESSAGE(without.ok(), lines(without.problems()));
}
