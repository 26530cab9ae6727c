// SPDX-License-Identifier: MIT
// Exit codes and outputs of the contract, on the built program.
#include "cli/program.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <set>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

/// Planned once for all that is asked of it.
const Said& paddling_day_as_json() {
    static const Said said = holdwater_says("plan --json " + demo_path("paddling-day"), fresh_folder("json"));
    return said;
}

}  // namespace

TEST_CASE("help and version are done, wrong usage is bad input") {
    const auto folder = fresh_folder("usage");
    CHECK(holdwater_says("--help", folder).exit == 0);
    CHECK(holdwater_says("--version", folder).exit == 0);
    CHECK(holdwater_says("cards --help", folder).exit == 0);
    CHECK(holdwater_says("", folder).exit == 2);
    CHECK(holdwater_says("bake", folder).exit == 2);
    CHECK(holdwater_says("cards", folder).exit == 2);
    CHECK(holdwater_says("cards --format poster " + demo_path("class-day"), folder).exit == 2);
    CHECK(holdwater_says("plan /does/not/exist.toml", folder).exit == 2);
    CHECK(holdwater_says("plan /", folder).exit == 2);
}

TEST_CASE("plan as JSON follows schema 1") {
    const Said& said = paddling_day_as_json();
    const bool done = said.exit == 0 || said.exit == 3;
    CHECK(done);
    const auto json = nlohmann::json::parse(said.out);
    CHECK(json["schema"] == 1);
    CHECK(json["verdict"] == "holds");
    CHECK(json["foods"][0]["come_up_h"]["high"].get<double>() < 6.0);
    CHECK(json["fill"]["pours"].size() >= 1);
    CHECK(json["warnings"].is_array());
    CHECK(json["stamp"].get<std::string>().size() == 9);
}

TEST_CASE("sources lists foods, rules and single words") {
    const auto folder = fresh_folder("sources");
    CHECK(holdwater_says("sources --foods", folder).out.find("pork-loin") != std::string::npos);
    CHECK(holdwater_says("sources --rules", folder).out.find("112.00 min") != std::string::npos);
    CHECK(holdwater_says("sources --search film", folder).out.find("film.likely") != std::string::npos);
    CHECK(holdwater_says("sources --search no-such-word-at-all", folder).exit == 2);
}

TEST_CASE("new writes a trip file that plans, and never over an existing one") {
    const auto folder = fresh_folder("new");
    const std::string file = (folder / "mine.toml").string();
    CHECK(holdwater_says("new '" + file + "'", folder).exit == 0);
    const int planned = holdwater_says("plan '" + file + "'", folder).exit;
    const bool good = planned == 0 || planned == 3;
    CHECK(good);
    const std::string before = file_text(file);
    CHECK(holdwater_says("new '" + file + "'", folder).exit == 2);
    CHECK(file_text(file) == before);
}

TEST_CASE("a refused trip leaves no cards and marks earlier ones as superseded") {
    const auto folder = fresh_folder("refused");
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");
    const fs::path trip = folder / "day.toml";
    std::ofstream(trip) << text;
    const std::string cards = "cards '" + trip.string() + "' --out '" + (folder / "out").string() + "'";
    const int first = holdwater_says(cards, folder).exit;
    const bool printed = first == 0 || first == 3;
    REQUIRE(printed);
    CHECK(fs::exists(folder / "out" / "day-cards.pdf"));
    const auto target = text.find("target = \"");
    REQUIRE(target != std::string::npos);
    text.replace(target, text.find('\n', target) - target, "target = \"50 C\"");
    std::ofstream(trip, std::ios::trunc) << text;
    const Said said = holdwater_says(cards, folder);
    CHECK(said.exit == 1);
    CHECK_FALSE(fs::exists(folder / "out" / "day-cards.pdf"));
    CHECK(fs::exists(folder / "out" / "day-cards.pdf.superseded"));
    CHECK(said.out.find("day-cards.pdf.superseded") != std::string::npos);
}

TEST_CASE("a folder that cannot be written is reported, nothing is half written") {
    const auto folder = fresh_folder("unwritable");
    std::ofstream(folder / "file") << "x";
    const Said said = holdwater_says(
        "cards " + demo_path("class-day") + " --out '" + (folder / "file" / "sub").string() + "'", folder);
    CHECK(said.exit == 2);
    CHECK(said.err.find("file") != std::string::npos);
}

TEST_CASE("each card number says its quantile, its rounding and its source, and is printed from that very value") {
    const auto json = nlohmann::json::parse(paddling_day_as_json().out);
    REQUIRE(json["figures"].size() > 100);
    std::set<std::string> ids;
    for (const auto& number : json["figures"]) {
        CAPTURE(number.dump());
        CHECK_FALSE(number["quantile"].get<std::string>().empty());
        CHECK_FALSE(number["step"].get<std::string>().empty());
        CHECK(std::set<std::string>{"up", "down", "none"}.contains(number["side"].get<std::string>()));
        CHECK(ids.insert(number["id"].get<std::string>()).second);
        CHECK_FALSE(number["source"].get<std::string>().empty());
        CHECK_FALSE(number["text"].get<std::string>().empty());
        if (number["id"] == "fill.fill_c") {
            CHECK(number["value"].get<double>() == std::floor(number["value"].get<double>()));
        }
    }
    const Said explained =
        holdwater_says("plan --explain " + demo_path("paddling-day"), fresh_folder("card-numbers-explained"));
    CHECK(explained.out.find("sampling error") != std::string::npos);
    CHECK(explained.out.find("longest_alone_h") != std::string::npos);
}

TEST_CASE("every fault of a command line says what is wrong and what would do") {
    const auto folder = fresh_folder("line-faults");
    const struct {
        const char* arguments;
        const char* what;
        const char* how;
    } cases[] = {{"", "needs a command", "plan, cards"},
                 {"plam", "\"plam\" is not known", "did you mean plan?"},
                 {"plan", "TRIP is missing", "holdwater plan TRIP"},
                 {"review a.toml", "LOG is missing", "holdwater review LOG"},
                 {"plan a.toml b.toml", "\"b.toml\"", ""},
                 {"plan a.toml --jsn", "--jsn is not an option", "did you mean --json?"},
                 {"sources --food", "--food is not an option", "did you mean --foods?"},
                 {"fingertip --altitude 3m", "--altitude is not an option", "holdwater fingertip --help"},
                 {"boil --altitude '3 m' --altitude '4 m'", "--altitude is given more than once", "leave one out"},
                 {"boil --altitude", "--altitude has no value", "--help"},
                 {"cards a.toml --format poster", "--format", "pocket"}};
    for (const auto& c : cases) {
        const Said said = holdwater_says(c.arguments, folder);
        CAPTURE(c.arguments);
        CAPTURE(said.err);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(said.err.find(c.what) != std::string::npos);
        CHECK(said.err.find(c.how) != std::string::npos);
    }
}

TEST_CASE("an empty --out is no folder, not the root of the disk") {
    const auto folder = fresh_folder("empty-out");
    const std::string log = "'" + std::string(HOLDWATER_SOURCE_DIR) + "/tests/logs/box.csv'";
    for (const std::string& arguments : {"cards " + demo_path("class-day") + " --out ''",
                                         "review " + demo_path("class-day") + " " + log + " --preview --out ''",
                                         "gauge " + log + " --water '20 L' --preview --out=''"}) {
        const Said said = holdwater_says(arguments, folder);
        CAPTURE(arguments);
        CHECK(said.exit == 2);
        CHECK(said.err.find("--out") != std::string::npos);
    }
}

TEST_CASE("an answer that was lost on its way out is no success") {
    const auto folder = fresh_folder("lost");
    const std::string err = (folder / "err.txt").string();
    for (const std::string& arguments :
         {std::string("boil --altitude '1850 m'"), "plan " + demo_path("class-day"), std::string("--help"),
          std::string("sources --foods"), std::string("mix --target '60 C' --altitude '0 m' --cold '2 C' --json")}) {
        CAPTURE(arguments);
        const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
        const int status = std::system(("'" + program + "' " + arguments + " >/dev/full 2>'" + err + "'").c_str());
        CHECK(WEXITSTATUS(status) == 2);
        CHECK(file_text(err).find("could not be written") != std::string::npos);
    }
}

TEST_CASE("only regular files of a sensible size are read") {
    const auto folder = fresh_folder("odd-files");
    std::ofstream(folder / "big.csv") << std::string(5'000'001, ' ');
    for (const std::string& log :
         {std::string("/proc/self/mem"), std::string("/dev/zero"), (folder / "big.csv").string()}) {
        const Said said = holdwater_says("review " + demo_path("class-day") + " '" + log + "'", folder);
        CAPTURE(log);
        CHECK(said.exit == 2);
        CHECK(said.err.find(log) != std::string::npos);
    }
}

TEST_CASE("a name that the cards cannot print is refused at its place, by plan as by cards") {
    const auto folder = fresh_folder("names");
    const std::string demo = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml");
    const auto said_of = [&](const std::string& command, const std::string& name) {
        std::string text = demo;
        const std::string old = "\"trout fillets\"";
        text.replace(text.find(old), old.size(), "\"" + name + "\"");
        std::ofstream(folder / "trip.toml") << text;
        return holdwater_says(command + " '" + (folder / "trip.toml").string() + "' ", folder);
    };
    for (const char* command : {"plan", "cards"}) {
        const Said glyph = said_of(command, "trout \u6c34");
        CHECK(glyph.exit == 2);
        CHECK(glyph.err.find(
                  "trip.toml:16:8: error: name \"trout \u6c34\": the typeface of the cards has no \"\u6c34\"") !=
              std::string::npos);
        const Said wide = said_of(command, std::string(50, 'W'));
        CHECK(wide.exit == 2);
        CHECK(wide.err.find("trip.toml:16:8: error: name ") != std::string::npos);
        CHECK(wide.err.find("too long for a card") != std::string::npos);
    }
}

TEST_CASE("the wallet prints what has room, names the rest, and refuses only where nothing has") {
    const auto folder = fresh_folder("wallet");
    const std::string to = " --format wallet --out '" + folder.string() + "'";
    const Said said = holdwater_says("cards " + demo_path("class-day") + to, folder);
    CHECK(said.exit == 0);
    CHECK(fs::exists(folder / "class-day-cards.pdf"));
    const std::string shown = said.out + said.err;
    CHECK(shown.find("card 6 \"Without a thermometer\" is printed without the bands, which finds no room") !=
          std::string::npos);
    CHECK(shown.find("card 5 \"Hold\" finds no room in the format wallet and is left out") != std::string::npos);
    const Said none = holdwater_says("cards " + demo_path("class-day") + to + " --only hold", folder);
    CHECK(none.exit == 2);
    CHECK(none.err.find("none of the cards finds room") != std::string::npos);
}
