// SPDX-License-Identifier: MIT
// The rows of the commands: sound in themselves, and the same in help and README.
#include "cli/commands/commands.hpp"
#include "cli/line/help.hpp"
#include "cli/line/options.hpp"
#include "cli/program.hpp"
#include "trip/keys.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace holdwater;
using namespace holdwater::support;
using cli::Command;
using cli::OptionRow;

namespace {

using Names = std::set<std::string>;

/// The rows of the README table that has this head.
std::vector<std::string> table(const std::string& head) {
    std::istringstream readme(file_text(std::string(HOLDWATER_SOURCE_DIR) + "/README.md"));
    std::vector<std::string> rows;
    bool inside = false;
    for (std::string line; std::getline(readme, line);) {
        if (inside && line.empty()) {
            break;
        }
        if (inside && !line.starts_with("|---")) {
            rows.push_back(line);
        }
        inside = inside || line == head;
    }
    return rows;
}

/// All options that a text names.
Names options_in(const std::string& text) {
    static const std::regex option("--[a-z][a-z0-9-]*");
    Names names;
    for (std::sregex_iterator it(text.begin(), text.end(), option), end; it != end; ++it) {
        names.insert(it->str());
    }
    return names;
}

/// The options of a command, with the group of printing or without it.
Names options_of(const Command& command, bool printing) {
    Names names;
    for (const OptionRow& row : command.rows) {
        if (row.is_option() && (row.group == "Printing") == printing) {
            names.insert(std::string(row.name));
        }
    }
    return names;
}

bool names_row(const std::string& text, const OptionRow& row) {
    return row.is_option() ? options_in(text).contains(std::string(row.name))
                           : text.find(row.name) != std::string::npos;
}

/// "boil --altitude \"1850 m\"" as a shell would hand it over.
std::vector<std::string> words_of(std::string_view line) {
    std::vector<std::string> words(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ' ' && !quoted) {
            words.emplace_back();
        } else {
            words.back() += c;
        }
    }
    return words;
}

const Command& command(const std::vector<Command>& all, std::string_view name) {
    const auto found = cli::command_named(all, name);
    REQUIRE(found.ok());
    return **found;
}

}  // namespace

TEST_CASE("README's table has every command with all its options, and none that does not exist") {
    const std::vector<Command> all = cli::all_commands();
    const std::vector<std::string> rows = table("| command | does |");
    CHECK(rows.size() == all.size());
    for (const Command& one : all) {
        CAPTURE(one.name);
        const std::string begin = "| `" + std::string(one.name);
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const std::string& line) {
            return line.starts_with(begin + " ") || line.starts_with(begin + "`");
        });
        REQUIRE(row != rows.end());
        CHECK(options_in(*row) == options_of(one, false));
        const std::string first = row->substr(0, row->find(" | ", begin.size()));
        for (const OptionRow& option : one.rows) {
            CAPTURE(option.name);
            if (option.required || !option.is_option()) {
                CHECK(names_row(first, option));
            }
        }
    }
}

TEST_CASE("README's table of printing has every option of cards and class, and every word that can stand there") {
    const std::vector<Command> all = cli::all_commands();
    std::string text;
    for (const std::string& row : table("| option of `cards` and `class` | does |")) {
        text += row + "\n";
    }
    for (const char* name : {"cards", "class"}) {
        CHECK(options_in(text) == options_of(command(all, name), true));
        for (const OptionRow& row : command(all, name).rows) {
            for (const std::string_view choice : row.choices) {
                CAPTURE(choice);
                if (row.group == "Printing") {
                    CHECK(std::regex_search(text, std::regex("[`,]" + std::string(choice) + "[`,]|" +
                                                             std::string(row.name) + " " + std::string(choice))));
                }
            }
        }
    }
}

TEST_CASE("README's exit codes are those of the program") {
    const std::vector<std::string> rows = table("| exit code | means |");
    CHECK(rows.size() == cli::exit_rows.size());
    for (std::size_t i = 0; i < std::min(rows.size(), cli::exit_rows.size()); ++i) {
        CHECK(rows[i].starts_with("| " + std::to_string(static_cast<int>(cli::exit_rows[i].exit)) + " | "));
    }
}

TEST_CASE("each row of a command is sound") {
    for (const Command& one : cli::all_commands()) {
        CAPTURE(one.name);
        CHECK_FALSE(one.summary.empty());
        CHECK_FALSE(one.group.empty());
        CHECK(one.examples.size() >= 2);
        Names names;
        for (const OptionRow& row : one.rows) {
            CAPTURE(row.name);
            CHECK(names.insert(std::string(row.name)).second);
            CHECK_FALSE(row.help.empty());
            CHECK_FALSE((row.required && !row.by_default.empty()));
            CHECK_FALSE((row.is_switch() && (row.required || !row.range.low.empty() || !row.choices.empty())));
            if (!row.needs.empty()) {
                CHECK(one.find(row.needs) != nullptr);
            }
            if (!row.formerly.empty()) {
                CHECK(one.find(row.formerly) == nullptr);
            }
            if (row.is_option() && row.required) {
                CHECK_FALSE((row.example_value().empty() && row.choices.empty()));
            }
        }
    }
}

TEST_CASE("each example is a line that its command understands") {
    for (const Command& one : cli::all_commands()) {
        for (const std::string_view example : one.examples) {
            CAPTURE(example);
            std::vector<std::string> words = words_of(example);
            REQUIRE(words.front() == one.name);
            words.erase(words.begin());
            const auto line = cli::read_words(one, words);
            REQUIRE(line.ok());
            cli::Options options(one, *line);
            one.read(options);
            for (const problem::Problem& fault : options.faults()) {
                const bool own_log = fault.code == "file-unreadable";  // that of the example is not here
                CHECK(own_log);
            }
        }
    }
}

TEST_CASE("help names every command, and every row of each; required ones are marked") {
    const auto folder = own_folder("help");
    const std::vector<Command> all = cli::all_commands();
    const Said program = holdwater_says("help", folder);
    CHECK(program.exit == 0);
    CHECK(program.out == holdwater_says("--help", folder).out);
    for (const Command& one : all) {
        CAPTURE(one.name);
        CHECK(program.out.find("\n  " + std::string(one.name) + " ") != std::string::npos);
        const Said said = holdwater_says("help " + std::string(one.name), folder);
        CHECK(said.exit == 0);
        CHECK(said.err.empty());
        CHECK(said.out == holdwater_says(std::string(one.name) + " --help", folder).out);
        for (const OptionRow& row : one.rows) {
            CAPTURE(row.name);
            const auto at = said.out.find("\n  " + std::string(row.name));
            REQUIRE(at != std::string::npos);
            const std::string entry = said.out.substr(at, said.out.find("\n  -", at + 1) - at);
            if (row.required) {
                CHECK(entry.find("required") != std::string::npos);
            }
            if (row.required || !row.one_of.empty() || !row.is_option()) {
                CHECK(said.out.substr(0, said.out.find('\n')).find(row.name) != std::string::npos);
            }
        }
        for (const cli::ExitRow& row : one.exits()) {
            const auto at = said.out.find("\n  " + std::to_string(static_cast<int>(row.exit)) + " ");
            REQUIRE(at != std::string::npos);
            CHECK(said.out.find(row.means.substr(0, row.means.find(' ')), at) != std::string::npos);
        }
        std::istringstream lines(said.out);
        for (std::string line; std::getline(lines, line);) {
            CHECK(line.size() <= 110);
        }
    }
    CHECK(holdwater_says("help hodl", folder).exit == 2);
    CHECK(holdwater_says("help hodl", folder).err.find("did you mean hold?") != std::string::npos);
    CHECK(holdwater_says("help hold boil", folder).exit == 2);
}

TEST_CASE("where one of several rows is required, a line without any of them is refused and names one") {
    int sets = 0;
    for (const Command& one : cli::all_commands()) {
        CAPTURE(one.name);
        cli::Options options(one, {});
        one.read(options);
        for (const OptionRow& row : one.rows) {
            if (row.one_of.empty()) {
                continue;
            }
            ++sets;
            CAPTURE(row.name);
            REQUIRE_FALSE(one.others_for(row).empty());
            CHECK_FALSE(row.required);
            CHECK(std::any_of(options.faults().begin(), options.faults().end(), [&](const problem::Problem& fault) {
                return (fault.message + fault.hint).find(row.name) != std::string::npos ||
                       (fault.message + fault.hint).find("log") != std::string::npos;
            }));
        }
    }
    CHECK(sets >= 6);
}

TEST_CASE("a command ends with the exit codes that its help names beside 0, 2 and 70") {
    const auto folder = own_folder("exit-codes");
    const auto file = [&](const std::string& name, const std::string& text) {
        std::ofstream(folder / name) << text;
        return "'" + (folder / name).string() + "'";
    };
    std::string text(trip::shortest_trip());
    const std::string untested = file("untested.toml", text);
    for (auto at = text.find("pork-loin"); at != std::string::npos; at = text.find("pork-loin")) {
        text.replace(at, 9, "wild-boar");
    }
    const std::string boar = file("boar.toml", text);
    const std::string log = file("log.csv", "time_hhmm,bath_c,note\n12:00,62,food in\n12:30,61.5,\n");
    const std::string out = " --out '" + folder.string() + "'";
    const auto quick = [&](const std::string& kind) {
        return "quick '" + (folder / (kind + ".toml")).string() + "' --kind " + kind +
               " --thickness \"40 mm\" --pieces 2 --water \"30 L\" --serve 2027-07-10T18:30" + out;
    };
    const std::map<std::string, std::string> refused{
        {"quick", quick("wild-boar")},
        {"plan", "plan " + boar},
        {"cards", "cards " + boar + out},
        {"mend", "mend " + boar},
        {"review", "review " + boar + " " + log},
        {"hold", "hold --kind wild-boar --shape slab --thickness \"30 mm\" --bath \"62 C\" --start \"4 C\""}};
    const std::map<std::string, std::string> check{
        {"quick", quick("pork-loin")},
        {"plan", "plan " + untested},
        {"cards", "cards " + untested + out},
        {"mend", "mend " + untested},
        {"review", "review " + untested + " " + log},
        {"hold", "hold --kind pork-loin --shape slab --thickness \"30 mm\" --bath \"50 C\" --start \"4 C\""},
        {"gauge", "gauge --reading \"0 h=62 C\" --reading \"0.5 h=61 C\" --water \"20 L\" --outside \"8 C\""}};
    for (const Command& one : cli::all_commands()) {
        CAPTURE(one.name);
        const std::string name(one.name);
        CHECK(one.refuses.empty() != refused.contains(name));
        // A plain PDF and Ctrl-C have tests of their own.
        CHECK((one.checks.empty() != check.contains(name) || name == "class" || name == "new"));
        if (const auto line = refused.find(name); line != refused.end()) {
            CHECK(holdwater_says(line->second, folder).exit == 1);
        }
        if (const auto line = check.find(name); line != check.end()) {
            CHECK(holdwater_says(line->second, folder).exit == 3);
        }
    }
}

TEST_CASE("an option that a command did not hand over is our own fault, not an answer") {
    const std::vector<Command> all = cli::all_commands();
    const cli::Options options(command(all, "boil"), {});
    CHECK_THROWS_AS(options.has({.name = "--tide", .help = ""}), std::logic_error);
}
