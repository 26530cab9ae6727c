// SPDX-License-Identifier: MIT
// What the program says hangs on what it is given, not on where and when it runs: language and time zone of the
// machine, its environment, the width of a terminal.
#include "cli/program.hpp"
#include "support/run.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

using Environment = std::map<std::string, std::string>;

/// A night on which summer time begins in most of Europe: 02:30 is on no clock there.
std::string night_of_the_gap() {
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml");
    for (const char* key : {"from", "serve"}) {
        const auto at = text.find(std::string("\n") + key + " = 2");
        REQUIRE(at != std::string::npos);
        const auto value = text.find('2', at);
        text.replace(value, 19, key == std::string("from") ? "2027-03-27T22:00:00" : "2027-03-28T02:30:00");
    }
    return text;
}

struct Answers {
    Run boil;
    Run plan;
};

Answers answers_in(const Environment& environment, bool keep) {
    const auto folder = own_folder("anywhere");
    std::ofstream(folder / "gap.toml") << night_of_the_gap();
    const Surroundings with{.folder = folder, .environment = environment, .keep_environment = keep};
    Answers made;
    made.boil = run({"boil", "--altitude", "1850.5 m", "--json"}, with);
    made.plan = run({"plan", "gap.toml", "--json"}, with);
    return made;
}

}  // namespace

TEST_CASE("language, time zone and environment of the machine change no byte of an answer") {
    const Answers here = answers_in({}, true);
    REQUIRE(good(here.boil.exit));
    REQUIRE(here.boil.out.find('.') != std::string::npos);  // a figure with a decimal mark
    REQUIRE((good(here.plan.exit) || here.plan.exit == 1));
    REQUIRE(here.plan.out.find("2027-03-28") != std::string::npos);
    const Environment elsewhere[] = {
        {{"LC_ALL", "de_DE.UTF-8"}, {"LANG", "de_DE.UTF-8"}, {"TZ", "Europe/Berlin"}},
        {{"LC_ALL", "no such one"}, {"TZ", "Pacific/Apia"}, {"HOME", "/nowhere"}, {"COLUMNS", "10"}, {"NO_COLOR", "1"}},
        {{"LC_NUMERIC", "tr_TR.ISO-8859-9"}, {"TZ", "no/such zone"}, {"TERM", "dumb"}}};
    for (const Environment& there : elsewhere) {
        const Answers other = answers_in(there, false);  // without HOME, PATH and all else
        CAPTURE(other.plan.err);
        CHECK(other.boil.exit == here.boil.exit);
        CHECK(other.boil.out == here.boil.out);
        CHECK(other.plan.exit == here.plan.exit);
        CHECK(other.plan.out == here.plan.out);
        CHECK(other.plan.err == here.plan.err);
    }
}

TEST_CASE("no answer holds a colour or any other escape") {
    const auto folder = own_folder("escapes");
    const Environment colours{{"TERM", "xterm-256color"}, {"CLICOLOR_FORCE", "1"}, {"FORCE_COLOR", "1"}};
    const std::vector<std::string> lines[] = {
        {"--help"}, {"help", "plan"}, {"boil", "--altitude", "3 m"}, {"sources", "--foods"}, {"plan"}};
    for (const auto& words : lines) {
        const Run said = run(words, {.folder = folder, .environment = colours});
        CHECK((said.out + said.err).find('\x1b') == std::string::npos);
    }
}
