// SPDX-License-Identifier: MIT
// `plan TRIP --now --reading`: what is said on the terminal and in JSON of a box that was found on the way.
#include "cli/program.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string class_day() {
    return std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml";
}

}  // namespace

TEST_CASE("a plan from here says in text and in JSON alike whether the meal holds") {
    const auto folder = own_folder("from-here");
    const auto fresh = nlohmann::json::parse(holdwater_says("plan '" + class_day() + "' --json", folder).out);
    const std::string in = std::string(fresh["fill"]["food_in"]).substr(0, 16);
    const int minutes = std::stoi(in.substr(11, 2)) * 60 + std::stoi(in.substr(14, 2)) + 30;
    const std::string now = fmt::format("{}{:02d}:{:02d}", in.substr(0, 11), minutes / 60, minutes % 60);
    const std::string asked = "plan '" + class_day() + "' --now " + now + " --reading \"64 C\" --food-in " + in;

    const Said text = holdwater_says(asked, folder);
    REQUIRE(good(text.exit));
    CHECK(text.out.find("where the bath reads 64 C") != std::string::npos);
    const bool holds = text.out.find("The meal holds") != std::string::npos;
    const bool later = text.out.find("later than planned") != std::string::npos;
    CHECK(holds != later);

    const auto json = nlohmann::json::parse(holdwater_says(asked + " --json", folder).out);
    const auto& here = json.at("from_here");
    CHECK(here.at("reading_c") == 64.0);
    CHECK(here.at("now").get<std::string>().substr(0, 16) == now);
    CHECK(here.at("food_in").get<std::string>().substr(0, 16) == in);
    CHECK((here.at("later_min").get<double>() > 0.0) == later);
    CHECK_FALSE(here.contains("core_c"));
    CHECK(here.at("meal").get<std::string>().size() >= 16);
}

TEST_CASE("a look at the box needs both time and reading, and a time that is one") {
    const auto folder = own_folder("from-here-bad");
    for (const char* asked : {"--now 14:20", "--reading \"58 C\"", "--now 25:99 --reading \"58 C\"",
                              "--now 14:20 --reading \"two hands\"", "--now 14:20 --reading \"580 C\""}) {
        CAPTURE(asked);
        const Said said = holdwater_says("plan '" + class_day() + "' " + asked, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
    }
}
