// SPDX-License-Identifier: MIT
// `boil` and `mix` on the built program.
#include "cli/program.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

using namespace holdwater::support;
using nlohmann::json;

namespace {

Said run(const std::string& arguments) {
    static const auto folder = own_folder("boil-mix");
    return holdwater_says(arguments, folder);
}

}  // namespace

TEST_CASE("boil: altitude and pressure, published values") {
    // US Standard Atmosphere 1976, published pressures 79 501 and 61 660 Pa; boiling points computed in the heat
    // reference, part c.2, two decimals.
    const json at2000 = json::parse(run("boil --altitude '2000 m' --json").out);
    CHECK(at2000["schema"] == 1);
    CHECK(near_abs(at2000["pressure_pa"].get<double>(), 79501.0, 1.0));
    CHECK(near_abs(at2000["boiling_c"].get<double>(), 93.32, 0.006));
    const json at4000 = json::parse(run("boil --altitude '4000 m' --json").out);
    CHECK(near_abs(at4000["pressure_pa"].get<double>(), 61660.0, 1.0));
    CHECK(near_abs(at4000["boiling_c"].get<double>(), 86.63, 0.006));
    // IAPWS R7-97 Table 36: 0.1, 1 and 10 MPa.
    const struct {
        const char* pressure;
        double kelvin;
    } rows[] = {{"100000 Pa", 372.755919}, {"1000000 Pa", 453.035632}, {"10000000 Pa", 584.149488}};
    for (const auto& row : rows) {
        const json j = json::parse(run(std::string("boil --json --pressure '") + row.pressure + "'").out);
        CHECK(near_abs(j["boiling_c"].get<double>() + 273.15, row.kelvin, 5e-7));
    }
    // A pressure wins over an altitude.
    const json both = json::parse(run("boil --altitude '4000 m' --pressure '1000 hPa' --json").out);
    CHECK(both["pressure_pa"] == 100000.0);
    CHECK(both["boiling_c"].get<double>() > 99.0);
    CHECK(both["warnings"].is_array());
    const Said text = run("boil --altitude '1850 m'");
    CHECK(text.exit == 0);
    for (const char* part : {"°C", "°F", "Weather", "0.8 K", "Pure water"}) {
        CHECK(has(text.out, part));
    }
}

TEST_CASE("boil: bad input is exit 2") {
    for (const char* bad : {"boil", "boil --altitude high", "boil --altitude 1850", "boil --altitude '12000 m'",
                            "boil --altitude '-600 m'", "boil --pressure '1 Pa'", "boil --altitude '1850 C'",
                            "boil --height '1850 m'", "boil --altitude '1850 m' --pressure thin"}) {
        const Said said = run(bad);
        CAPTURE(bad);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK_FALSE(said.err.empty());
    }
}

TEST_CASE("mix: rows of the worked table through the program") {
    // Hand reference D1, computed: mass of boiling water per mass of ice water and of melting ice.
    const struct {
        const char* target;
        const char* altitude;
        const char* cold;
        double parts;
        double tolerance;  // half a digit and 0.1 K of the table's boiling point
    } rows[] = {{"60 C", "0 m", "slush", 1.50, 0.01},    {"60 C", "0 m", "snow", 3.49, 0.02},
                {"57 C", "2000 m", "slush", 1.57, 0.01}, {"57 C", "2000 m", "snow", 3.76, 0.02},
                {"65 C", "4000 m", "slush", 3.00, 0.02}, {"65 C", "4000 m", "snow", 6.67, 0.04}};
    for (const auto& row : rows) {
        const Said said = run(std::string("mix --json --by mass --target '") + row.target + "' --altitude '" +
                              row.altitude + "' --cold " + row.cold);
        CHECK(said.exit == 0);
        const json j = json::parse(said.out);
        CHECK(near_abs(j["hot_parts"].get<double>(), row.parts, row.tolerance));
        CHECK(j["cold_parts"] == 1);
        CHECK(j["low_c"] < j["result_c"]);
        CHECK(j["result_c"] < j["high_c"]);
        CHECK(j["schema"] == 1);
    }
}

TEST_CASE("mix: volume is the default, cold water has a temperature, the text names parts and the bias") {
    const json volume = json::parse(run("mix --json --target '60 C' --altitude '0 m' --cold '2 C'").out);
    const json mass = json::parse(run("mix --json --target '60 C' --altitude '0 m' --cold '2 C' --by mass").out);
    CHECK(near_abs(mass["hot_parts"].get<double>(), 58.0 / 39.97, 0.001));
    CHECK(near_abs(volume["hot_parts"].get<double>() / mass["hot_parts"].get<double>(), 1.043, 0.002));
    CHECK(near_abs(volume["result_c"].get<double>(), 60.0, 1e-9));
    const Said text = run("mix --target '60 C' --altitude '1850 m' --cold '2 C'");
    CHECK(text.exit == 0);
    for (const char* part : {"boiling to", "by volume", "likely about 57.5 °C", "in practice", "nothing were lost",
                             "°F", "cooler", "scalds"}) {
        CHECK(has(text.out, part));
    }
}

TEST_CASE("mix: what cannot be mixed is exit 2 with what would do") {
    const struct {
        const char* arguments;
        const char* named;
    } cases[] = {{"mix", "--target"},
                 {"mix", "--altitude"},
                 {"mix", "--cold"},
                 {"mix --target '60 C' --altitude '0 m' --cold snow", "--by mass"},
                 {"mix --target '90 C' --altitude '4000 m' --cold slush", "86.6"},
                 {"mix --target '5 C' --altitude '0 m' --cold '10 C'", "10"},
                 {"mix --target '60 C' --altitude '0 m' --cold slushy", "slush"},
                 {"mix --target '60 C' --altitude '0 m' --cold 2", "C"},
                 {"mix --target '60 C' --altitude '0 m' --cold x", "slush, snow, or a temperature"},
                 {"mix --target '60 C' --altitude nan --cold '2 C'", "--altitude \"1850 m\""},
                 {"mix --target '60 C' --altitude '0 m' --cold '2 C' --by weight", "mass"},
                 {"mix --target '60 C' --altitude '0 m' --cold '2 C' --hight 3", "--hight"},
                 {"mix --target 60 --altitude '0 m' --cold '2 C'", "--target"}};
    for (const auto& c : cases) {
        const Said said = run(c.arguments);
        CAPTURE(c.arguments);
        CAPTURE(said.err);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(has(said.err, c.named));
    }
}

TEST_CASE("mix: the text never names steam or ice") {
    CHECK_FALSE(has(run("mix --target '99.9 C' --altitude '5 m' --cold '2 C'").out, "101"));
    CHECK_FALSE(has(run("mix --target '1 C' --altitude '5 m' --cold '0 C'").out, "-1"));
}
