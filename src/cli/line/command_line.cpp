// SPDX-License-Identifier: MIT
#include "cli/line/command_line.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <deque>
#include <string_view>

namespace holdwater::cli {
namespace {

/// A row as the reader of lines sees it, and the texts that it found.
struct Slot {
    const OptionRow* row = nullptr;
    CLI::Option* option = nullptr;
    bool on = false;
    std::string one;
    std::vector<std::string> all;
};

void add(CLI::App& line, Slot& slot) {
    const std::string name(slot.row->name);
    if (slot.row->is_switch()) {
        slot.option = line.add_flag(name, slot.on);
        return;
    }
    switch (slot.row->takes) {
        case Takes::one:
            slot.option = line.add_option(name, slot.one);
            break;
        case Takes::several:
        case Takes::list:
            slot.option = line.add_option(name, slot.all);
            // An option takes one word a time: what comes after it is not its own.
            slot.option->allow_extra_args(!slot.row->is_option());
            break;
        case Takes::three:
            slot.option = line.add_option(name, slot.all)->expected(1, 3)->allow_extra_args(false);
            break;
    }
}

std::string see_help(const Command& command) {
    return fmt::format("see `holdwater {} --help`", command.name);
}

/// Words that stand by themselves, one for each row that still wants one.
void keep_words(const Command& command, const std::vector<std::string>& words, CommandLine& line) {
    for (const std::string& word : words) {
        const auto wants = std::find_if(command.rows.begin(), command.rows.end(), [&](const OptionRow& row) {
            return !row.is_option() && (row.takes == Takes::several || !line.given.contains(row.name));
        });
        if (wants != command.rows.end()) {
            line.given[std::string(wants->name)].push_back(word);
        } else {
            line.unexpected.push_back(word);
        }
    }
}

void keep(const Slot& slot, CommandLine& line) {
    if (slot.option->count() == 0 || (slot.row->is_switch() && !slot.on)) {
        return;
    }
    const bool one = slot.row->takes == Takes::one && !slot.row->is_switch();
    line.given[std::string(slot.row->name)] = one ? std::vector{slot.one} : slot.all;
}

/// Three words or one: two are one, and a word that stands by itself.
void give_back(const Command& command, const Slot& slot, CommandLine& line) {
    if (slot.row->takes == Takes::three && slot.all.size() == 2) {
        line.given[std::string(slot.row->name)].pop_back();
        keep_words(command, {slot.all.back()}, line);
    }
}

/// What stopped the reading, in our own words: an option twice, or without its value.
problem::Problems faults_of(const CLI::ParseError& stop, const std::deque<Slot>& slots, const Command& command) {
    problem::Problems faults;
    const std::string said = stop.what();
    for (const Slot& slot : slots) {
        const std::string name(slot.row->name);
        if (!said.starts_with(name + ":")) {
            continue;
        }
        if (stop.get_name() != "ArgumentMismatch") {
            faults.push_back(problem::error("value-unusable", name + " cannot be used:" + said.substr(name.size() + 1),
                                            see_help(command)));
        } else if (slot.option->count() > 1) {
            faults.push_back(problem::error("option-twice", name + " is given more than once", "leave one out"));
        } else {
            faults.push_back(problem::error("value-missing", name + " has no value after it", see_help(command)));
        }
    }
    if (faults.empty()) {
        faults.push_back(
            problem::error("usage", fmt::format("holdwater {}: {}", command.name, said), see_help(command)));
    }
    return faults;
}

}  // namespace

problem::Result<CommandLine> read_words(const Command& command, const std::vector<std::string>& words) {
    CLI::App reader{"", std::string(command.name)};
    reader.allow_extras();
    std::deque<Slot> slots;  // the reader points into them
    for (const OptionRow& row : command.rows) {
        slots.emplace_back().row = &row;
        add(reader, slots.back());
    }
    const auto mark = std::find(words.begin(), words.end(), "--");
    std::vector<std::string> before(words.begin(), mark);
    std::reverse(before.begin(), before.end());  // as the reader wants them
    CommandLine line;
    try {
        reader.parse(before);
    } catch (const CLI::CallForHelp&) {
        line.help = true;
        return line;
    } catch (const CLI::ParseError& stop) {
        return faults_of(stop, slots, command);
    }
    for (const Slot& slot : slots) {
        keep(slot, line);
    }
    for (const Slot& slot : slots) {
        give_back(command, slot, line);
    }
    line.unknown = reader.remaining();
    if (mark != words.end()) {
        keep_words(command, {mark + 1, words.end()}, line);
    }
    return line;
}

}  // namespace holdwater::cli
