// SPDX-License-Identifier: MIT
// Scripts by which a shell completes the words of a command line, made from the rows of the commands.
#pragma once

#include "cli/line/command.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::cli {

enum class Shell { bash, zsh, fish };

/// "bash", "zsh", "fish".
std::vector<std::string_view> shell_names();
/// One of these names.
Shell shell_named(std::string_view name);

/// `food_kinds`: what can stand behind an option that takes a kind of food.
std::string completion(Shell shell, const std::vector<Command>& commands,
                       const std::vector<std::string_view>& food_kinds);

}  // namespace holdwater::cli
