// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/line/help.hpp"
#include "cli/line/options.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow help_subject{.name = "COMMAND", .help = "the one to tell about; all of them if not given"};

Act read_help(Options& options) {
    const std::vector<Command> commands = all_commands();
    std::string text;
    if (const Given name = options.text(help_subject)) {
        const auto command = command_named(commands, *name);
        options.add(command.problems());
        text = command ? command_help(**command) : "";
    } else {
        text = program_help(commands);
    }
    return [text] {
        fmt::print("{}", text);
        return Exit::done;
    };
}

}  // namespace

Command help_command() {
    return {.name = "help",
            .group = headings::program,
            .summary = "tell the commands, or the options of one",
            .rows = {help_subject},
            .examples = {"help", "help hold"},
            .read = read_help};
}

}  // namespace holdwater::cli
