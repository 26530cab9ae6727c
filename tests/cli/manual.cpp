// SPDX-License-Identifier: MIT
// Manual and completion, as the built program writes them, held against the rows and against the shells.
#include "cli/commands/commands.hpp"
#include "cli/line/completion.hpp"
#include "cli/program.hpp"
#include "facts/facts.hpp"
#include "trip/keys.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// What a shell of this machine says to a line; exit 127 where there is no such program.
Said shell_says(const std::string& line, const std::filesystem::path& folder) {
    const std::string out = (folder / "said.txt").string();
    const std::string err = (folder / "fault.txt").string();
    const int status = std::system(("cd '" + folder.string() + "' && { " + line + "; } >said.txt 2>fault.txt").c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_text(out), file_text(err)};
}

bool there_is(const std::string& program, const std::filesystem::path& folder) {
    return shell_says("command -v " + program, folder).exit == 0;
}

void keep(const std::filesystem::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

/// The page as a terminal shows it, words by single blanks.
std::string page_as_read(const std::string& page, const std::filesystem::path& folder) {
    keep(folder / page, holdwater_says("help --man " + page.substr(0, page.find('.')), folder).out);
    const Said said = shell_says("LC_ALL=C MANWIDTH=80 man --warnings -P cat -l " + page + " | col -bx", folder);
    CHECK(said.exit == 0);
    CHECK(said.err.empty());
    std::istringstream words(said.out);
    std::string text;
    for (std::string word; words >> word;) {
        text += word + " ";
    }
    return text;
}

/// What bash offers for the last of these words.
std::set<std::string> offered(const std::vector<std::string>& words, const std::filesystem::path& folder) {
    std::string line = "COMP_WORDS=(holdwater";
    for (const std::string& word : words) {
        line += " '" + word + "'";
    }
    keep(folder / "ask.bash", "source ./holdwater.bash\n" + line + ")\nCOMP_CWORD=" + std::to_string(words.size()) +
                                  "\n_holdwater\nprintf '%s\\n' \"${COMPREPLY[@]}\"\n");
    const Said said = shell_says("bash ask.bash", folder);
    CHECK(said.exit == 0);
    CHECK(said.err.empty());
    std::set<std::string> all;
    std::istringstream lines(said.out);
    for (std::string one; std::getline(lines, one);) {
        if (!one.empty()) {
            all.insert(one);
        }
    }
    return all;
}

using Offered = std::set<std::string>;

}  // namespace

TEST_CASE("the manual of the program tells every command and every row, without a warning") {
    const auto folder = own_folder("manual");
    const std::string page = page_as_read("holdwater.1", folder);
    for (const cli::Command& command : cli::all_commands()) {
        CAPTURE(command.name);
        const auto at = page.find("holdwater " + std::string(command.name) + " ");
        REQUIRE(at != std::string::npos);
        std::size_t last = at;
        for (const cli::OptionRow& row : command.rows) {
            CAPTURE(row.name);
            const auto found = page.find(" " + std::string(row.name) + " ", last);
            CHECK(found != std::string::npos);
        }
        for (const std::string_view example : command.examples) {
            CAPTURE(example);
            CHECK(page.find("holdwater " + std::string(example.substr(0, 40))) != std::string::npos);
        }
        for (const cli::ExitRow& row : command.exits()) {
            CHECK(page.find(std::to_string(static_cast<int>(row.exit)) + " " + std::string(row.means).substr(0, 20),
                            at) != std::string::npos);
        }
    }
}

TEST_CASE("the manual of the trip file tells every key, without a warning, and its example is a trip") {
    const auto folder = own_folder("manual-trip");
    const std::string page = page_as_read("holdwater-trip.5", folder);
    std::size_t at = page.find("TABLES");
    for (const trip::KeyTable& table : trip::key_tables()) {
        CAPTURE(table.heading);
        at = page.find(std::string(table.heading) + " ", at);
        REQUIRE(at != std::string::npos);
        for (const trip::Key& key : table.keys) {
            CAPTURE(key.name);
            at = page.find(" " + std::string(key.name) + " ", at);
            REQUIRE(at != std::string::npos);
        }
    }
    // Taken out of the page as one would copy it from the terminal.
    const Said shown = shell_says("LC_ALL=C MANWIDTH=100 man -P cat -l holdwater-trip.5 | col -bx", folder);
    const auto begin = shown.out.find("[trip]", shown.out.find("The shortest trip file"));
    REQUIRE(begin != std::string::npos);
    keep(folder / "copied.toml", shown.out.substr(begin, shown.out.find("SEE ALSO") - begin));
    CHECK(holdwater_says("plan '" + (folder / "copied.toml").string() + "'", folder).exit == 3);
}

TEST_CASE("both pages pass the lint of mandoc, where it is installed") {
    const auto folder = own_folder("manual-lint");
    for (const std::string page : {"holdwater.1", "holdwater-trip.5"}) {
        keep(folder / page, holdwater_says("help --man " + page.substr(0, page.find('.')), folder).out);
        CHECK(file_text((folder / page).string()).starts_with(".TH "));
        if (there_is("mandoc", folder)) {
            const Said lint = shell_says("mandoc -T lint " + page, folder);
            CHECK(lint.exit == 0);
            CHECK(lint.out == "");
        }
    }
}

TEST_CASE("bash completes commands, options, words, lists, kinds, files and folders") {
    const auto folder = own_folder("completion");
    keep(folder / "holdwater.bash", holdwater_says("help --completion bash", folder).out);
    keep(folder / "my trip.toml", "");
    keep(folder / "box.csv", "");
    keep(folder / "photo.png", "");
    std::filesystem::create_directory(folder / "cards");

    Offered commands{"--help", "--version"};
    for (const cli::Command& command : cli::all_commands()) {
        commands.insert(std::string(command.name));
        Offered options{"--help"};
        for (const cli::OptionRow& row : command.rows) {
            if (row.is_option()) {
                options.insert(std::string(row.name));
            }
        }
        CAPTURE(command.name);
        CHECK(offered({std::string(command.name), "--"}, folder) == options);
    }
    CHECK(offered({""}, folder) == commands);
    CHECK(offered({"cards", "--format", ""}, folder) == Offered{"hand", "pocket", "wallet", "large"});
    CHECK(offered({"cards", "--only", "plan,fi"}, folder) == Offered{"plan,fill"});
    CHECK(offered({"cards", "--out", "c"}, folder) == Offered{"cards"});
    CHECK(offered({"cards", "my"}, folder) == Offered{"my trip.toml"});
    CHECK(offered({"gauge", "b"}, folder) == Offered{"box.csv"});
    CHECK(offered({"plan", "p"}, folder).empty());
    CHECK(offered({"hold", "--bath", ""}, folder).empty());
    CHECK(offered({"help", "fing"}, folder) == Offered{"fingertip"});
    Offered kinds;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        kinds.insert(kind.key);
    }
    CHECK(offered({"hold", "--kind", ""}, folder) == kinds);
}

TEST_CASE("the scripts of the other shells name every option, and those shells read them, where they are installed") {
    const auto folder = own_folder("completion-others");
    for (const std::string shell : {"zsh", "fish"}) {
        const std::string script = holdwater_says("help --completion " + shell, folder).out;
        keep(folder / shell, script);
        for (const cli::Command& command : cli::all_commands()) {
            for (const cli::OptionRow& row : command.rows) {
                CAPTURE(row.name);
                const std::string written = shell == "fish"
                                                ? "-l " + std::string(row.name.substr(row.is_option() ? 2 : 0))
                                                : std::string(row.name) + "[";
                CHECK((!row.is_option() || script.find(written) != std::string::npos));
            }
        }
        if (there_is(shell, folder)) {
            const Said read = shell_says(shell + " -n ./" + shell, folder);
            CHECK(read.exit == 0);
            CHECK(read.err == "");
        }
    }
    if (there_is("fish", folder)) {
        const Said said = shell_says("fish -c 'source ./fish; complete -C \"holdwater cards --format w\"'", folder);
        CHECK(said.out.starts_with("wallet"));
    }
}

TEST_CASE("help tells one thing a time, and knows no other page and no other shell") {
    const auto folder = own_folder("help-faults");
    CHECK(holdwater_says("help hold --man holdwater", folder).exit == 2);
    const Said page = holdwater_says("help --man cards", folder);
    CHECK(page.exit == 2);
    CHECK(page.out.empty());
    CHECK(page.err.find("One of: holdwater, holdwater-trip") != std::string::npos);
    CHECK(holdwater_says("help --completion csh", folder).err.find("One of: bash, zsh, fish") != std::string::npos);
}
