// SPDX-License-Identifier: MIT
// Kits: what a trip takes of them, whose word wins, and where their faults are.
#include "reading.hpp"
#include "trip/kit.hpp"

#include <doctest/doctest.h>

#include <map>

using namespace holdwater;
using namespace holdwater::support;

namespace {

const std::string blue = R"([box]
name = "blue"
inside = ["500 mm", "300 mm", "300 mm"]
water = "33 L"
thermometer = "1 K"
loss = "0.9 W/K"

[fire]
pots = 2
pot = "8 L"
boils_in = "25 min"
fuel = "wood"
cold_water = "10 C"
)";

/// The small trip with these lines in place of its box and its fire.
std::string trip_with(const std::string& box, const std::string& fire) {
    std::string text = small_trip;
    const auto from = text.find("[[box]]");
    const auto weather = text.find("[weather]");
    text.replace(from, weather - from, "[[box]]\n" + box + "\n\n");
    const auto at = text.find("[fire]");
    return text.replace(at, std::string::npos, "[fire]\n" + fire + "\n");
}

problem::Result<trip::Trip> read_with(const std::string& text, const std::map<std::string, std::string>& kits) {
    trip::Known with = known();
    with.read_kit = [kits](const std::string& name) -> problem::Result<trip::Kit> {
        const auto found = kits.find(name);
        if (found == kits.end()) {
            return problem::error("word-unknown", "there is no kit \"" + name + "\"", "there is blue");
        }
        return trip::Kit{found->second, "kits/" + name + ".toml", (trip_tests() / "logs").string()};
    };
    return trip::read_trip(text, "t.toml", files_in(trip_tests() / "logs"), with);
}

}  // namespace

TEST_CASE("a trip that uses a kit is the trip that has its values") {
    const auto used = read_with(trip_with("use = \"blue\"", "use = \"blue\""), {{"blue", blue}});
    CAPTURE(lines(used.problems()));
    REQUIRE(used.ok());
    std::string box = blue.substr(blue.find("name"), blue.find("\n[fire]") - blue.find("name"));
    const auto written = read_with(trip_with(box, blue.substr(blue.find("pots"))), {});
    REQUIRE(written.ok());
    CHECK(trip::canonical(*used) == trip::canonical(*written));
}

TEST_CASE("what the trip says wins over the kit, and its own test takes the kit's loss away") {
    const auto trip =
        read_with(trip_with("use = \"blue\"\nwater = \"28 L\"\n"
                            "test = [{ after = \"0 h\", bath = \"64 C\" }, { after = \"4 h\", bath = \"58 C\" }]\n"
                            "test_outside = \"8 C\"\ntest_water = \"28 L\"",
                            "use = \"blue\"\npots = 3"),
                  {{"blue", blue}});
    CAPTURE(lines(trip.problems()));
    REQUIRE(trip.ok());
    CHECK(trip->boxes.front().water == units::litres(28));
    CHECK(std::holds_alternative<std::vector<trip::BoxReading>>(trip->boxes.front().test));
    CHECK(trip->fire.pots == 3);
    CHECK(trip->fire.pot == units::litres(8));
}

TEST_CASE("a fault in a kit has its place in the kit, one of the trip its place in the trip") {
    std::string bad = blue;
    bad.replace(bad.find("33 L"), 4, "33 K");
    bad.replace(bad.find("thermometer"), 11, "thermomter");
    const auto trip = read_with(trip_with("use = \"blue\"", "use = \"red\""), {{"blue", bad}});
    REQUIRE_FALSE(trip.ok());
    const std::string said = lines(trip.problems());
    CAPTURE(said);
    CHECK(said.find("kits/blue.toml:4:9: error: water") != std::string::npos);
    CHECK(said.find("kits/blue.toml:5:1: error: [[box]] has no key \"thermomter\"") != std::string::npos);
    CHECK(said.find("error: use: there is no kit \"red\" (there is blue)") != std::string::npos);
    CHECK(said.find("t.toml:") != std::string::npos);
}

TEST_CASE("a kit that is none is refused with its place and what would do") {
    const struct {
        const char* kit;
        const char* says;
    } cases[] = {{"[box\n", "kits/k.toml:1:"},
                 {"[fire]\npots = 2\n", "[box] is missing in this kit"},
                 {"[box]\nuse = \"other\"\n", "kits/k.toml:2:7: error: a kit uses no other kit"},
                 {"[box]\nwater = \"20 L\"\n[trip]\nname = \"x\"\n", "a kit has no \"trip\""},
                 {"box = 3\n", "[box] is missing in this kit"}};
    for (const auto& c : cases) {
        CAPTURE(c.kit);
        const auto trip = read_with(trip_with("use = \"k\"", "pots = 2"), {{"k", c.kit}});
        CHECK_FALSE(trip.ok());
        CAPTURE(lines(trip.problems()));
        CHECK(lines(trip.problems()).find(c.says) != std::string::npos);
    }
    for (const char* name : {"../blue", "", "a b", "/etc/x", "blue.toml"}) {
        CAPTURE(name);
        CHECK_FALSE(trip::is_kit_name(name));
        const auto trip = read_with(trip_with("use = \"" + std::string(name) + "\"", "pots = 2"), {{"blue", blue}});
        CHECK(lines(trip.problems()).find("use") != std::string::npos);
    }
    const auto number = read_with(trip_with("use = 3", "pots = 2"), {});
    CHECK(lines(number.problems()).find("error: use: text in quotes is due") != std::string::npos);
}

TEST_CASE("a log that a kit names is looked up beside the kit") {
    std::string kit = blue;
    kit.replace(kit.find("loss = \"0.9 W/K\""), 16,
                "log = \"no-such.csv\"\ntest_water = \"33 L\"\ntest_outside = \"8 C\"");
    const auto trip = read_with(trip_with("use = \"k\"", "use = \"k\""), {{"k", kit}});
    CHECK_FALSE(trip.ok());
    CHECK(lines(trip.problems()).find((trip_tests() / "logs" / "no-such.csv").string().substr(0, 30)) !=
          std::string::npos);
}
