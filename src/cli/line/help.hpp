// SPDX-License-Identifier: MIT
// Help, made from the rows of the commands.
#pragma once

#include "cli/line/command.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// All commands under their headings, and the exit codes.
std::string program_help(const std::vector<Command>& commands);
/// How a command is written, its options and examples.
std::string command_help(const Command& command);

/// "hold --shape S --thickness D --bath T --start T": with every row that is required.
std::string usage_of(const Command& command);

}  // namespace holdwater::cli
