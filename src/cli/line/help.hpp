// SPDX-License-Identifier: MIT
// Help, made from the rows of the commands.
#pragma once

#include "cli/line/command.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

/// All commands under their headings, and the exit codes.
std::string program_help(const std::vector<Command>& commands);
/// How a command is written, its options and examples.
std::string command_help(const Command& command);

/// "boil (--altitude H | --pressure P) [options]": with every row that is required, and the words that may stand by
/// themselves.
std::string usage_of(const Command& command);

/// "--reading TIME=T ...": a row as it is written.
std::string shown(const OptionRow& row);

/// What is said of a row: its words, and in brackets what holds for it.
std::string meaning(const Command& command, const OptionRow& row);

/// The headings of the commands, and those of a command's rows ("Options" for the common one), in the order in which
/// they come first.
std::vector<std::string_view> headings_of(const std::vector<Command>& commands);
std::vector<std::string_view> headings_of(const Command& command);
bool stands_under(const OptionRow& row, std::string_view heading);

/// "This program plans ...", as help and manual begin, and what else both say.
inline constexpr std::string_view what_it_is =
    "Plans a hot-water-bath meal in an insulated box and prints the plan as pocket cards.";
inline constexpr std::string_view about_dashes =
    "Options stand anywhere behind the command. What stands behind a lone -- is a file, even if it begins with a dash.";

}  // namespace holdwater::cli
