// SPDX-License-Identifier: MIT
// The words behind a command, sorted to its rows.
#pragma once

#include "cli/line/command.hpp"
#include "problem/problem.hpp"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace holdwater::cli {

struct CommandLine {
    std::map<std::string, std::vector<std::string>, std::less<>> given;  // by name of the row; a switch has no text
    std::vector<std::string> unknown;                                    // words that no row took, in their order
    std::vector<std::string> unexpected;  // of those behind "--", the ones for which no row was left
    bool help = false;                    // asked for; then nothing else counts
};

/// Sorts the words. All behind a lone "--" stand by themselves, even if they look like options. Faults: option-twice,
/// value-missing. What is missing or unknown is left to Options, to be reported with the faults of the values.
problem::Result<CommandLine> read_words(const Command& command, const std::vector<std::string>& words);

}  // namespace holdwater::cli
