// SPDX-License-Identifier: MIT
// A command as data: what it is called, which options it takes and how it is read.
#pragma once

#include "cli/exit.hpp"
#include "cli/line/option_row.hpp"
#include "problem/problem.hpp"

#include <functional>
#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

class Options;

/// What a command does once its options are read.
using Act = std::function<Exit()>;

struct Command {
    std::string_view name = {};
    std::string_view group = {};    // the heading under which help lists it
    std::string_view summary = {};  // one line
    std::vector<OptionRow> rows = {};
    std::vector<std::string_view> examples = {};  // what stands after "holdwater "
    std::string_view refuses = {};                // what exit code 1 means of it; empty: it never ends so
    std::string_view checks = {};                 // the same of exit code 3
    /// Reads every value and leaves each fault in the options. What comes back is done only if there was none.
    std::function<Act(Options&)> read = {};
    std::string_view formerly = {};  // the name that it had in earlier versions

    /// The exit codes that it can end with, and what each means of it.
    std::vector<ExitRow> exits() const;
    /// The other rows of which one is required, where this one is not given.
    std::vector<const OptionRow*> others_for(const OptionRow& row) const;
    /// Null: there is no such row.
    const OptionRow* find(std::string_view row) const;
};

/// The command of that name. A fault for any other word: with the name of today for an old one (command-renamed), else
/// with the nearest (choice-unknown).
problem::Result<const Command*> command_named(const std::vector<Command>& commands, std::string_view name);

/// "cards, plan, class": for messages.
std::string names_of(const std::vector<Command>& commands);

}  // namespace holdwater::cli
