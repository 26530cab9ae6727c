// SPDX-License-Identifier: MIT
// `gauge`: exit codes, JSON, texts and the chart, on the built program.
#include "cli/program.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <sstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const std::string good_test = "--reading '0 h=62 C' --reading '4 h=54.5 C' --water '20 L' --outside '8 C' ";

Said gauge(const std::string& arguments, const std::string& folder) {
    return holdwater_says("gauge " + arguments, fresh_folder(folder));
}

std::string log_file(const fs::path& folder, const std::string& text) {
    const fs::path path = folder / "box.csv";
    std::ofstream(path) << text;
    return "'" + path.string() + "' ";
}

std::size_t columns_of(const std::string& line) {
    std::size_t columns = 0;
    for (const char c : line) {
        columns += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
    }
    return columns;
}

}  // namespace

TEST_CASE("gauge --json: two readings, the closed form, hours above the floor") {
    const Said said = gauge(good_test + "--json", "gauge-json");
    CHECK(said.exit == 0);
    const auto json = nlohmann::json::parse(said.out);
    CHECK(json["schema"] == 1);
    const double tau = 4.0 / std::log(54.0 / 46.5);
    CHECK(near_rel(json["tau_h"].get<double>(), tau, 1e-9));
    CHECK(json["loss_low"].get<double>() < json["loss_w_per_k"].get<double>());
    CHECK(json["loss_high"].get<double>() > json["loss_w_per_k"].get<double>());
    CHECK(json["liner_j_per_k"].is_null());
    CHECK(json["weak"] == false);
    CHECK(json["residuals_k"].size() == 2);
    REQUIRE(json["hours_above_floor"].size() == 3);
    for (const auto& row : json["hours_above_floor"]) {
        const double air = row["outside_c"].get<double>();
        CHECK(near_rel(row["likely"].get<double>(), tau * std::log((62.0 - air) / (54.4 - air)), 1e-9));
        CHECK(row["low"].get<double>() < row["likely"].get<double>());
    }
    CHECK(json["warnings"].empty());
}

TEST_CASE("gauge: the poured temperature shows the liner") {
    const auto json = nlohmann::json::parse(gauge(good_test + "--poured '65 C' --json", "gauge-liner").out);
    // C = 20 L x density x 4186 x 3 K / 54 K; density of water at 65 C 980.6 kg/m3 (three figures are enough).
    CHECK(near_rel(json["liner_j_per_k"].get<double>(), 0.020 * 980.6 * 4186.0 * 3.0 / 54.0, 1e-3));
    CHECK(json["liner_low"].get<double>() < json["liner_j_per_k"].get<double>());
}

TEST_CASE("gauge: the text begins with the verdict, has lines to paste, and fits a terminal") {
    const Said said = gauge(good_test + "--inside '540x290x300 mm'", "gauge-text");
    CHECK(said.exit == 0);
    CHECK(said.out.starts_with("This box loses "));
    CHECK(has(said.out, "test = [{ after = \"0 h\", bath = \"62 C\" }, { after = \"4 h\", bath = \"54.5 C\" }]"));
    CHECK(has(said.out, "inside = [\"540 mm\", \"290 mm\", \"300 mm\"]"));
    CHECK(has(said.out, "test_outside = \"8 C\""));
    CHECK(has(said.out, "test_water = \"20 L\""));
    CHECK(has(said.out, "breez"));
    CHECK(has(said.out, "0.0 °C (32 °F)"));
    std::istringstream lines(said.out);
    for (std::string line; std::getline(lines, line);) {
        CAPTURE(line);
        CHECK(columns_of(line) <= 96);
    }
}

TEST_CASE("gauge: the pasted lines are read by a trip file") {
    const auto folder = fresh_folder("gauge-paste");
    const Said said = holdwater_says("gauge " + good_test, folder);
    std::string trip = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/template.toml");
    const auto from = said.out.find("  test = [");
    const auto to = said.out.find("\n\n", from);
    REQUIRE(from != std::string::npos);
    const std::string pasted = said.out.substr(from, to - from + 1);
    // In place of the template's own test.
    std::string made;
    std::istringstream lines(trip);
    bool put = false;
    for (std::string line; std::getline(lines, line);) {
        const bool test = line.starts_with("test") || line.starts_with("reading_error") || line.starts_with("loss =") ||
                          line.starts_with("log =");
        if (!test) {
            made += line + "\n";
        } else if (!put) {
            made += pasted;
            put = true;
        }
    }
    REQUIRE(put);
    std::ofstream(folder / "mine.toml") << made;
    const Said planned = holdwater_says("plan '" + (folder / "mine.toml").string() + "'", folder);
    CAPTURE(planned.err);
    CHECK(planned.exit != 2);
    CHECK(planned.exit != 70);
}

TEST_CASE("gauge: a log with its own air, a gap, a chart") {
    const auto folder = fresh_folder("gauge-chart");
    const std::string log = log_file(folder,
                                     "time_hhmm,bath_c,outside_c,note\n16:00,64.1,9,filled\n16:30,63.4,8.5,\n"
                                     "17:00,62.8,8,\n17:30,62.1,7,\n20:30,58.6,4,\n21:00,58.1,3.5,\n21:30,57.5,3,\n");
    const std::string out = " --out '" + (folder / "out").string() + "'";
    const Said said = holdwater_says("gauge " + log + "--water '28 L' --preview" + out, folder);
    CHECK(said.exit == 3);
    CHECK(has(said.err, "box.csv:6:1: warning: no bath reading from 17:30 to 20:30"));
    const std::string png = file_text((folder / "out" / "box-gauge.png").string());
    CHECK(png.substr(1, 3) == "PNG");
    holdwater_says("gauge " + log + "--water '28 L' --preview" + out, folder);
    CHECK(file_text((folder / "out" / "box-gauge.png").string()) == png);  // same input, same bytes
}

TEST_CASE("gauge: a chart for a bare pair of readings and for a long log with a jump") {
    const auto folder = fresh_folder("gauge-charts");
    const std::string out = "--preview --out '" + folder.string() + "' ";
    CHECK(holdwater_says("gauge " + good_test + out, folder).exit == 0);
    CHECK(fs::exists(folder / "readings-gauge.png"));
    std::string text = "time_min,bath_c\n";
    for (int i = 0; i < 500; ++i) {
        const double bath = 8.0 + 56.0 * std::exp(-i / 1500.0) + (i > 380 ? 6.0 : 0.0);
        text += std::to_string(i) + "," + std::to_string(bath) + "\n";
    }
    const Said said =
        holdwater_says("gauge " + log_file(folder, text) + "--water '20 L' --outside '8 C' " + out, folder);
    CHECK(said.exit == 3);
    CHECK(has(said.err, "box.csv:383:1: warning: the bath jumps"));
    CHECK(fs::exists(folder / "box-gauge.png"));
}

TEST_CASE("gauge: faults are bad input, each with its name and place") {
    CHECK(gauge("", "gauge-bad").exit == 2);
    CHECK(gauge("--reading '0 h=62 C' --water '20 L' --outside '8 C'", "gauge-bad").exit == 2);
    CHECK(gauge(good_test + "--fill '5 C'", "gauge-bad").exit == 2);
    CHECK(gauge(good_test + "--inside '100x100x100 mm'", "gauge-bad").exit == 2);
    CHECK(gauge(good_test + "--inside '54x29'", "gauge-bad").exit == 2);
    CHECK(gauge(good_test + "stray", "gauge-bad").exit == 2);
    CHECK(gauge(good_test + "--reading-error '9 K'", "gauge-bad").exit == 2);
    CHECK(gauge("/does/not/exist.csv --water '20 L' --outside '8 C'", "gauge-bad").exit == 2);
    CHECK(has(gauge(good_test + "--otside '5 C'", "gauge-bad").err, "did you mean --outside?"));
    const Said hot = gauge("--reading '0 h=144 C' --reading '3 h=135 C' --water '20 L' --outside '8 C'", "gauge-bad");
    CHECK(hot.exit == 2);
    CHECK(has(hot.err, "144 F"));
    const auto folder = fresh_folder("gauge-f");
    const Said said = holdwater_says(
        "gauge " + log_file(folder, "time_min,bath_c\n0,143\n60,141\n") + "--water '20 L' --outside '8 C'", folder);
    CHECK(said.exit == 2);
    CHECK(said.out.empty());
    CHECK(has(said.err, "box.csv:2:3: error: the bath readings look like Fahrenheit"));
}

TEST_CASE("gauge: a weak test is exit 3 and says how long to wait") {
    const Said said =
        gauge("--reading '0 h=62 C' --reading '30 min=61 C' --water '20 L' --outside '8 C'", "gauge-weak");
    CHECK(said.exit == 3);
    CHECK(has(said.err, "a weak test (for a fall of 5 K wait "));
}

TEST_CASE("gauge: a bath that does not cool, or cools as no box does, is bad input") {
    const auto told_of = [](const std::string& readings) {
        return gauge(readings + " --water '20 L' --outside '8 C'", "gauge-limits");
    };
    for (const char* still : {"--reading '0 h=62 C' --reading '4 h=62 C'",
                              "--reading '0 h=62 C' --reading '2 h=62 C' --reading '5 h=61.999 C'"}) {
        CAPTURE(still);
        const Said said = told_of(still);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(has(said.err, "let the box stand for longer") != has(said.err, "wait longer between them"));
    }
    const Said fast = told_of("--reading '0 h=62 C' --reading '2 min=60 C'");
    CHECK(fast.exit == 2);
    CHECK(fast.out.empty());
    CHECK(has(fast.err, "is more than any box has (from 0.05 W/K to 20 W/K"));
    CHECK(told_of("--reading '0 h=62 C' --reading '4 h=12 C'").exit == 2);  // as in a trip file: 20 C and above
}

TEST_CASE("gauge: a test of five minutes is called short; days and months of warmth are not promised") {
    const Said brief =
        gauge("--reading '0 h=62 C' --reading '5 min=61.5 C' --water '20 L' --outside '8 C'", "gauge-short");
    CHECK(brief.exit == 3);
    CHECK(has(brief.err, "5 min is a short test (a good one lasts 4 h or longer)"));
    const Said good_test =
        gauge("--reading '0 h=95 C' --reading '24 h=88 C' --water '200 L' --outside '20 C'", "gauge-long");
    CHECK(good_test.exit == 0);
    CHECK(has(good_test.out, "over 72 h"));
}
