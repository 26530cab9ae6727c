// SPDX-License-Identifier: MIT
// What the terminal says of leftovers and of a meal that slips is what the cards say.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("without a thermometer leftovers are thrown away and no meal waits: the terminal says so as the cards do") {
    const auto folder = own_folder("one-truth");
    const Said said = holdwater_says(
        "plan '" + std::string(HOLDWATER_SOURCE_DIR) + "/tests/card/trips/no-thermometer-beef.toml'", folder);
    REQUIRE(good(said.exit));
    CHECK(said.out.find("throw them away") != std::string::npos);
    CHECK(said.out.find("reheat once") == std::string::npos);
    CHECK(said.out.find("top up before") == std::string::npos);
}

TEST_CASE("no thickness reads as leave: the terminal names what is planned for, and what warms too slowly") {
    const auto folder = own_folder("one-truth-thick");
    const Said said =
        holdwater_says("plan '" + std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml'", folder);
    REQUIRE(good(said.exit));
    CHECK(said.out.find("planned for pieces up to") != std::string::npos);
    CHECK(said.out.find("warms too slowly to be safe") != std::string::npos);
}

TEST_CASE("what a thermometer reads is never safe sooner than a bath that is known") {
    const auto folder = own_folder("one-truth-hold");
    const Said said = holdwater_says(
        "hold --kind salmon-wild --shape slab --thickness 25mm --bath 69C --start 5C --target 63C --contact free",
        folder);
    REQUIRE(good(said.exit));
    const auto time_after = [&](const std::string& words) {
        const auto at = said.out.find(words);
        REQUIRE(at != std::string::npos);
        return std::stoi(said.out.substr(at + words.size()));  // both in minutes here
    };
    CHECK(time_after("stirs: after ") >= time_after("Safe to eat after "));
}
