// SPDX-License-Identifier: MIT
// review on the built program: exit codes, JSON, chart, and what a newcomer gets wrong.
#include "cli/program.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

std::string log_path(const std::string& name) {
    return "'" + std::string(HOLDWATER_SOURCE_DIR) + "/tests/logs/" + name + "'";
}

std::string on(const std::string& trip, const std::string& log) {
    return "review " + log_path(trip + ".toml") + " " + log_path(log + ".csv");
}

bool says(const Said& said, const std::string& text) {
    return said.out.find(text) != std::string::npos || said.err.find(text) != std::string::npos;
}

}  // namespace

TEST_CASE("review: the verdict leads and decides the exit code") {
    const auto folder = fresh_folder("review-exit");
    const Said eat = holdwater_says(on("crew", "fair-night"), folder);
    CHECK(eat.exit == 0);
    CHECK(eat.out.find(": EAT\n") < eat.out.find("core from 10.0\u00A0°C (50\u00A0°F) to"));
    CHECK(says(eat, "fair-night.csv:11:1: note: no bath reading"));
    CHECK(says(eat, "harmless only as long as"));
    const Said next = holdwater_says(on("chicken", "poultry-under-60"), folder);
    CHECK(next.exit == 3);
    CHECK(says(next, "FINISH OVER THE FIRE, EAT NEXT"));
    CHECK(says(next, "fall.eat-next"));
    CHECK(holdwater_says(on("crew", "gap-at-night"), folder).exit == 3);
    const Said early = holdwater_says(on("crew", "too-early"), folder);
    CHECK(early.exit == 3);
    CHECK(says(early, "NOT SAFE YET"));
    const Said bad = holdwater_says(on("crew", "down-to-48"), folder);
    CHECK(bad.exit == 1);
    CHECK(says(bad, "THROW AWAY"));
    CHECK(says(bad, "Reheating does not undo toxin"));
    for (const Said* said : {&eat, &next, &early, &bad}) {
        CHECK(says(*said, "When in doubt, throw it out."));
        CHECK(says(*said, "Local food-safety rules have the last word."));
    }
}

TEST_CASE("review: doubtful rows are reported with their place and with what they change") {
    const Said said = holdwater_says(on("crew", "thermometer-jump"), fresh_folder("review-doubt"));
    CHECK(says(said, "thermometer-jump.csv:9:1: warning"));
    CHECK(says(said, "Without the doubtful readings: eat"));
}

TEST_CASE("review --json follows schema 1") {
    const auto folder = fresh_folder("review-json");
    const auto json = nlohmann::json::parse(holdwater_says(on("crew", "late-top-up") + " --json", folder).out);
    CHECK(json["schema"] == 1);
    const std::string stamp = json["stamp"];
    CHECK(stamp.size() == 9);
    CHECK(says(holdwater_says(on("crew", "late-top-up"), folder), stamp));
    const auto plan = nlohmann::json::parse(holdwater_says("plan " + log_path("uk.toml") + " --json", folder).out);
    const auto class_day = nlohmann::json::parse(holdwater_says(on("uk", "uk-one-fall") + " --json", folder).out);
    CHECK(class_day["stamp"] == plan["stamp"]);
    CHECK(class_day["stamp"] != stamp);
    CHECK(json["verdict"] == "throw-away");
    CHECK(json["below_floor_h"].get<double>() > 4.0);
    CHECK(json["growth_log10"].get<double>() > 1.0);
    CHECK(json["rule"].get<std::string>().find("fall.eat-now") != std::string::npos);
    CHECK(json["problems"].empty());
    CHECK(json["foods"].size() == 1);
    CHECK(json["foods"][0]["come_up_h"].is_number());
    bool rise = false;
    for (const auto& warning : json["warnings"]) {
        rise = rise || (warning["code"] == "rise-without-top-up" && warning["place"]["line"] == 7);
    }
    CHECK(rise);
    const auto early = nlohmann::json::parse(holdwater_says(on("crew", "too-early") + " --json", folder).out);
    CHECK(early["foods"][0]["ready_late_h"].is_null());
    CHECK(early["foods"][0]["missing_h"].is_number());
    const Said missing = holdwater_says("review " + log_path("crew.toml") + " /no/such.csv --json", folder);
    CHECK(missing.exit == 2);
    CHECK(nlohmann::json::parse(missing.out)["verdict"].is_null());
}

TEST_CASE("review: what to do never contradicts what was seen") {
    const auto folder = fresh_folder("review-action");
    const auto with = [&](const std::string& name, const std::string& head, const std::string& csv) {
        std::string trip = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/tests/logs/crew.toml");
        const auto at = trip.find("rules = \"us\"\nunits = \"both\"");
        REQUIRE(at != std::string::npos);
        trip.replace(at, std::string("rules = \"us\"\nunits = \"both\"").size(), head);
        std::ofstream(folder / (name + ".toml")) << trip;
        std::ofstream(folder / (name + ".csv")) << csv;
        const std::string stem = "'" + (folder / name).string();
        return holdwater_says("review " + stem + ".toml' " + stem + ".csv'", folder);
    };
    const std::string fair = "time_min,bath_c,note\n0,70,food in\n60,67.4,\n120,66.2,\n180,65.1,\n240,64,\n";
    // The bath of the last row never gets there: staying in it is no advice.
    const Said cool = with("ca", "rules = \"ca\"\nunits = \"metric\"", fair);
    CHECK(says(cool, "never makes it safe"));
    CHECK_FALSE(says(cool, "Leave it in the bath"));
    const Said out = holdwater_says(on("crew", "too-early"), folder);
    CHECK(says(out, "It came out too early"));
    CHECK_FALSE(says(out, "Leave it in the bath"));
    // Fahrenheit alone where that was asked for.
    const Said us =
        with("us", "rules = \"us\"\nunits = \"us\"", fair + "300,63,\n305,44,\n310,62.8,\n360,62,\n900,57,\n");
    CHECK(says(us, "°F"));
    CHECK_FALSE(says(us, "°C"));
    CHECK(us.out.substr(0, us.out.find("Stamp of")).find(" C") == std::string::npos);  // stamps are any letters
    CHECK(says(us, "doubtful-reading") == false);
    CHECK(says(us, "cannot have gone to 111"));
    // Never a double stop.
    CHECK_FALSE(says(holdwater_says(on("minced", "minced"), folder), ".."));
}

TEST_CASE("review: the consumer advice counts only if the core stood there for its three minutes") {
    const auto folder = fresh_folder("review-advice");
    const Said night = holdwater_says(on("crew", "fair-night"), folder);
    const auto json = nlohmann::json::parse(holdwater_says(on("crew", "fair-night") + " --json", folder).out);
    CHECK(json["foods"][0]["consumer_advice_met"] == !says(night, "under the consumer advice"));
    CHECK(json["foods"][0]["core_peak_c"].get<double>() > 63.0);
    CHECK(says(night, "under the consumer advice"));
}

TEST_CASE("review --preview draws a chart named after the log") {
    const auto folder = fresh_folder("review-chart");
    const Said said = holdwater_says(on("crew", "gap-at-night") + " --preview --out '" + folder.string() + "'", folder);
    CHECK(said.exit == 3);
    const std::string png = file_text((folder / "gap-at-night-review.png").string());
    CHECK(png.substr(1, 3) == "PNG");
    CHECK(png.size() > 10000);
}

TEST_CASE("review: wrong input is reported and never judged") {
    const auto folder = fresh_folder("review-wrong");
    const auto write = [&](const std::string& name, const std::string& text) {
        std::ofstream(folder / name) << text;
        return "review " + log_path("crew.toml") + " '" + (folder / name).string() + "'";
    };
    const Said swapped = holdwater_says("review " + log_path("fair-night.csv") + " " + log_path("crew.toml"), folder);
    CHECK(swapped.exit == 2);
    CHECK(says(swapped, "the trip comes first"));
    CHECK(holdwater_says("review " + log_path("crew.toml"), folder).exit == 2);
    CHECK(holdwater_says("review", folder).exit == 2);
    CHECK(holdwater_says(write("empty.csv", ""), folder).exit == 2);
    CHECK(holdwater_says(write("core.csv", "time_min,core_c,note\n0,4,food in\n60,30,\n"), folder).exit == 2);
    CHECK(holdwater_says(write("order.csv", "time_min,bath_c,note\n60,65,food in\n0,70,\n"), folder).exit == 2);
    CHECK(holdwater_says(write("twice.csv", "time_min,bath_c,note\n0,70,food in\n60,66,food in\n"), folder).exit == 2);
    // Without a note the first row is taken: judged, but to be looked at.
    const Said no_note = holdwater_says(
        write("no-note.csv", "time_min,bath_c\n0,70\n60,67.4\n120,66.2\n180,65.1\n240,64\n300,62.9\n"), folder);
    CHECK(no_note.exit == 3);
    CHECK(says(no_note, "NOT SAFE YET"));
    CHECK(says(no_note, "no row says when pork loin went in"));
    CHECK(holdwater_says(write("out-twice.csv", "time_min,bath_c,note\n0,70,food in\n60,66,out\n120,65,out\n"), folder)
              .exit == 2);
    // Celsius numbers under bath_f: thrown away, and the likely slip is named.
    const Said slip = holdwater_says(
        write("slip.csv", "time_min,bath_f,note\n0,70,food in\n60,67.4,\n120,66.2,\n180,65.1,\n240,64,\n300,63,\n"),
        folder);
    CHECK(slip.exit == 1);
    CHECK(says(slip, "look like Celsius"));
}
