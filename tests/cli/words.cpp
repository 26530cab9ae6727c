// SPDX-License-Identifier: MIT
// How the words of a command line are sorted: what an option takes and leaves, names of earlier versions, empty names.
#include "cli/commands/commands.hpp"
#include "cli/line/command_line.hpp"
#include "cli/program.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

using Words = std::vector<std::string>;

cli::CommandLine sorted(cli::Command (*command)(), const Words& words) {
    const auto line = cli::read_words(command(), words);
    REQUIRE(line.ok());
    return *line;
}

bool says(const Said& said, const std::string& part) {
    return said.err.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("--only takes one word with commas, and leaves the trip behind it alone") {
    const auto folder = own_folder("only");
    for (const auto& [only, name] : {std::pair{"--only plan", "one"}, std::pair{"--only=fill,plan", "two"}}) {
        CAPTURE(only);
        const fs::path out = folder / name;
        const Said said = holdwater_says(
            std::string("cards ") + only + " " + demo_path("class-day") + " --out '" + out.string() + "'", folder);
        CAPTURE(said.err);
        const bool done = said.exit == 0 || said.exit == 3;
        CHECK(done);
        CHECK(fs::exists(out / "class-day-cards.pdf"));
    }
    const auto line = sorted(cli::cards_command, {"--only", "plan,fill", "a.toml", "b.toml", "--only", "hold"});
    CHECK(line.given.at("TRIP") == Words{"a.toml", "b.toml"});
    CHECK(line.given.at("--only") == Words{"plan,fill", "hold"});
    const Said said = holdwater_says("cards --only plan,fil " + demo_path("class-day"), folder);
    CHECK(said.exit == 2);
    CHECK(says(said, "--only \"fil\" is not known (did you mean fill? One of: one, plan, fill, "));
    CHECK(holdwater_says("cards --only '' " + demo_path("class-day"), folder).exit == 2);
}

TEST_CASE("other options of several values leave what is behind them alone as well") {
    CHECK(sorted(cli::class_command, {"--shape", "slab,ball", "stray"}).unknown == Words{"stray"});
    const auto log = sorted(cli::gauge_command, {"--inside", "540x290x300 mm", "box.csv"});
    CHECK(log.given.at("--inside") == Words{"540x290x300 mm"});
    CHECK(log.given.at("LOG") == Words{"box.csv"});
    const auto three = sorted(cli::gauge_command, {"--inside", "540 mm", "290 mm", "300 mm", "box.csv"});
    CHECK(three.given.at("--inside").size() == 3);
    CHECK(three.given.at("LOG") == Words{"box.csv"});
    const auto readings = sorted(cli::gauge_command, {"--reading", "0 h=62 C", "--reading", "5 h=55 C", "box.csv"});
    CHECK(readings.given.at("--reading").size() == 2);
    CHECK(readings.given.at("LOG") == Words{"box.csv"});
}

TEST_CASE("all behind a lone -- are names of files") {
    const auto line = sorted(cli::plan_command, {"--json", "--", "--explain"});
    CHECK(line.given.contains("--json"));
    CHECK_FALSE(line.given.contains("--explain"));
    CHECK(line.given.at("TRIP") == Words{"--explain"});
    CHECK(sorted(cli::review_command, {"a.toml", "--", "-b.csv"}).given.at("LOG") == Words{"-b.csv"});
    CHECK(sorted(cli::cards_command, {"--", "-a", "--", "b"}).given.at("TRIP") == Words{"-a", "--", "b"});
    CHECK(sorted(cli::cards_command, {"a.toml", "--"}).given.at("TRIP") == Words{"a.toml"});
    const auto folder = own_folder("dashes");
    const Said said = holdwater_says("plan -- --json", folder);
    CHECK(said.exit == 2);
    CHECK(says(said, "--json: error: cannot be read"));
    const Said more = holdwater_says("plan -- -a -b", folder);
    CHECK(more.exit == 2);
    CHECK(says(more, "\"-b\" belongs to no option"));
    CHECK(says(holdwater_says("boil -- --altitude", folder), "\"--altitude\" belongs to no option"));
    CHECK(says(holdwater_says("plan --", folder), "TRIP is missing"));
    // A file that begins with a dash, from end to end.
    const std::string program = "cd '" + folder.string() + "' && '" + HOLDWATER_BINARY_DIR "/holdwater' ";
    CHECK(std::system((program + "new -- -dash.toml >said.txt").c_str()) == 0);
    CHECK(fs::exists(folder / "-dash.toml"));
    CHECK(WEXITSTATUS(std::system((program + "plan -- -dash.toml >said.txt 2>&1").c_str())) % 3 == 0);
}

TEST_CASE("a file without a name is refused, and nothing is written") {
    const auto folder = own_folder("nameless");
    const std::string program = "cd '" + folder.string() + "' && '" + HOLDWATER_BINARY_DIR "/holdwater' ";
    CHECK(WEXITSTATUS(std::system((program + "new '' >/dev/null 2>&1").c_str())) == 2);
    CHECK(fs::is_empty(folder));
    for (const char* arguments :
         {"new ''", "new -- ''", "plan ''", "cards ''", "review '' ''", "gauge '' --water '20 L'"}) {
        CAPTURE(arguments);
        const Said said = holdwater_says(arguments, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(says(said, "names no file"));
    }
}

TEST_CASE("a name of earlier versions is answered with that of today") {
    const auto folder = own_folder("earlier");
    for (const char* arguments : {"touch", "touch --bath '60 C'", "touch --help", "help touch"}) {
        CAPTURE(arguments);
        const Said said = holdwater_says(arguments, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(says(said, "touch is called fingertip now"));
        CHECK(says(said, "holdwater fingertip --help"));
    }
    const std::string piece = "hold --kind cod --shape slab --thickness '40 mm' --bath '65 C' --start '5 C' ";
    for (const char* rounding : {"--rounding 0.3", "--rounding=0.3"}) {
        const Said said = holdwater_says(piece + "--contact free " + rounding, folder);
        CHECK(said.exit == 2);
        CHECK(said.out.empty());
        CHECK(says(said, "--rounding is not an option of this command (did you mean --curvature?)"));
    }
    const Said floor = holdwater_says(piece + "--contact floor --json", folder);
    CHECK(floor.exit == 0);
    CHECK(floor.out == holdwater_says(piece + "--contact bottom --json", folder).out);
    CHECK(floor.out.find("\"contact\": \"bottom\"") != std::string::npos);
}

TEST_CASE("an option before the command, and one that says nothing alone, are reported") {
    const auto folder = own_folder("alone");
    CHECK(says(holdwater_says("--jsn plan", folder), "\"--jsn\" is not known"));
    CHECK(says(holdwater_says("plan --jsn", folder), "did you mean --json?"));
    CHECK(says(holdwater_says("plan --jsn", folder), "TRIP is missing"));
    const Said dim = holdwater_says("cards a.toml --dim --copies 0 --format poster", folder);
    CHECK(dim.exit == 2);
    CHECK(says(dim, "--dim says nothing without --preview"));
    CHECK(says(dim, "--copies 0 is outside what can be worked with (1 to 100)"));
    CHECK(says(dim, "--format \"poster\" is not known"));
    CHECK(says(holdwater_says("cards a.toml --copies 2.5", folder), "2.5 is not a whole number"));
    CHECK(says(holdwater_says("cards a.toml --copies x", folder), "\"x\" is not a plain number"));
}
