// SPDX-License-Identifier: MIT
// Nothing to write to, nothing to read from, two decks of one name: what was printed before may not go on looking
// valid.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const std::string paddling = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// The demo trip with the value of a key changed, first one in the file.
std::string with(const std::string& key, const std::string& value) {
    std::string text = paddling;
    const auto at = text.find("\n" + key + " = ");
    REQUIRE(at != std::string::npos);
    return text.replace(at + 1, text.find('\n', at + 1) - at - 1, key + " = " + value);
}

/// A folder with day.toml as given and, in out/, what looks like the cards of an earlier run.
fs::path folder_with(const std::string& name, const std::string& trip) {
    const auto folder = own_folder(name);
    fs::create_directory(folder / "out");
    std::ofstream(folder / "day.toml") << trip;
    for (const char* file : {"day-cards.pdf", "day-basis.pdf"}) {
        std::ofstream(folder / "out" / file) << "of an earlier run";
    }
    return folder;
}

std::string cards_of(const fs::path& folder) {
    return "cards '" + (folder / "day.toml").string() + "' --out '" + (folder / "out").string() + "'";
}

void check_superseded(const fs::path& folder) {
    for (const char* file : {"day-cards.pdf", "day-basis.pdf"}) {
        CAPTURE(std::string(file));
        CHECK_FALSE(fs::exists(folder / "out" / file));
        CHECK(file_text((folder / "out" / (std::string(file) + ".superseded")).string()) == "of an earlier run");
    }
}

/// Runs the program under a shell with its own redirections, where those of holdwater_says would be in the way.
int exit_of(const std::string& arguments, const std::string& redirections) {
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    const int status = std::system(("'" + program + "' " + arguments + " " + redirections).c_str());
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

TEST_CASE("an input that only planning finds wrong is no refusal, and its earlier cards no longer hold either") {
    const auto folder = folder_with("wrong-input", with("water", "\"5 qt\""));
    const Said plan = holdwater_says("plan '" + (folder / "day.toml").string() + "'", folder);
    CHECK(plan.exit == 2);
    CHECK(has(plan.out, "no plan, an input is wrong"));
    CHECK_FALSE(has(plan.out + plan.err, "REFUSED"));
    CHECK(has(plan.err, "this would hold: water = "));  // what is wrong has its way out as well
    CHECK_FALSE(has(plan.out + plan.err, "no change that was tried"));
    CHECK(has(plan.err, "day.toml:"));
    const Said json = holdwater_says("plan --json '" + (folder / "day.toml").string() + "'", folder);
    CHECK(json.exit == 2);
    CHECK(has(json.out, "\"verdict\": null"));
    const Said said = holdwater_says(cards_of(folder), folder);
    CHECK(said.exit == 2);
    CHECK_FALSE(has(said.out, "refused"));
    CHECK(has(said.out, "day-cards.pdf.superseded"));
    check_superseded(folder);
}

TEST_CASE("a refusal supersedes earlier cards even where nobody can be warned") {
    struct Lost {
        const char* redirections;
        int exit;  // with standard output lost as well the answer is lost, which has an exit code of its own
    };
    for (const Lost& lost : {Lost{">/dev/null 2>&-", 1}, Lost{">/dev/null 2>/dev/full", 1}, Lost{">&- 2>&-", 2},
                             Lost{">/dev/full 2>/dev/full", 2}}) {
        CAPTURE(std::string(lost.redirections));
        const auto folder = folder_with("untold", with("target", "\"50 C\""));
        CHECK(exit_of(cards_of(folder), lost.redirections) == lost.exit);
        check_superseded(folder);
    }
}

TEST_CASE("a refusal supersedes earlier cards though nobody reads standard error any more") {
    const auto folder = folder_with("unread", with("target", "\"50 C\""));
    const std::string program = std::string(HOLDWATER_BINARY_DIR) + "/holdwater";
    const std::string line = "( '" + program + "' " + cards_of(folder) + " 2>&1 >/dev/null; echo $? >'" +
                             (folder / "exit").string() + "' ) | exec true";
    CHECK(std::system(line.c_str()) == 0);
    CHECK(file_text((folder / "exit").string()) == "1\n");
    check_superseded(folder);
}

TEST_CASE("a deck is printed whole while standard error is closed, full or left by its reader") {
    for (const char* way : {"2>&-", "2>/dev/full"}) {
        CAPTURE(std::string(way));
        const auto folder = folder_with("unheard", paddling);
        const int exit = exit_of(cards_of(folder), std::string(">/dev/null ") + way);
        const bool done = exit == 0 || exit == 3;
        CHECK(done);
        const std::string pdf = (folder / "out" / "day-cards.pdf").string();
        CHECK(file_text(pdf).starts_with("%PDF"));
        CHECK(std::system(("qpdf --check '" + pdf + "' >/dev/null 2>&1").c_str()) == 0);
    }
}

TEST_CASE("a fault of the command line keeps its exit code while standard error is closed or full") {
    for (const char* way : {"2>&-", "2>/dev/full"}) {
        CAPTURE(std::string(way));
        CHECK(exit_of("boil --altitude nonsense", std::string(">/dev/null ") + way) == 2);
        CHECK(exit_of("nonsense", std::string(">/dev/null ") + way) == 2);
    }
}

TEST_CASE("two trips of one name are refused before anything is written") {
    const auto folder = own_folder("one-name");
    for (const char* part : {"a", "b"}) {
        fs::create_directory(folder / part);
        std::ofstream(folder / part / "day.toml") << paddling;
    }
    const std::string trips = "'" + (folder / "a/day.toml").string() + "' '" + (folder / "b/day.toml").string() + "'";
    const Said said = holdwater_says("cards " + trips + " --out '" + (folder / "out").string() + "'", folder);
    CHECK(said.exit == 2);
    CHECK(has(said.err, "a/day.toml"));
    CHECK(has(said.err, "b/day.toml"));
    CHECK(said.out.empty());
    CHECK_FALSE(fs::exists(folder / "out"));
}
