// SPDX-License-Identifier: MIT
// What the terminal says of leftovers and of a meal that slips is what the cards say.
#include "cli/program.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <set>
#include <string>
#include <utility>

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

TEST_CASE("what saves a late pour is told only where a pour is planned") {
    const auto folder = own_folder("one-truth-late");
    for (const auto& [name, told] : {std::pair{"beef", false}, std::pair{"chicken", true}}) {
        CAPTURE(name);
        const std::string trip =
            "plan '" + std::string(HOLDWATER_SOURCE_DIR) + "/tests/card/trips/no-thermometer-" + name + ".toml'";
        const auto json = nlohmann::json::parse(holdwater_says(trip + " --json", folder).out);
        REQUIRE(json["top_ups"].empty() != told);
        CHECK((holdwater_says(trip, folder).out.find("a pour over") != std::string::npos) == told);
    }
}

TEST_CASE("no two ways beside a plan are chosen by the same lines") {
    const auto folder = own_folder("one-truth-ways");
    int ways = 0;
    for (const char* trip : {"layouts/trips/hut-night.toml", "tests/card/trips/no-thermometer-beef.toml",
                             "tests/card/trips/no-thermometer-chicken.toml", "tests/card/trips/uk-pork.toml"}) {
        CAPTURE(trip);
        const auto json = nlohmann::json::parse(
            holdwater_says("plan '" + std::string(HOLDWATER_SOURCE_DIR) + "/" + trip + "' --json", folder).out);
        std::set<std::string> lines;
        for (const auto& way : json["ways"]) {
            CHECK(lines.insert(way["lines"].dump()).second);
            ++ways;
        }
    }
    CHECK(ways >= 6);
}
