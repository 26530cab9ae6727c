// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"
#include "cli/commands/common_rows.hpp"
#include "cli/files/data.hpp"
#include "cli/line/completion.hpp"
#include "cli/line/help.hpp"
#include "cli/line/man_page.hpp"
#include "cli/line/options.hpp"
#include "facts/facts.hpp"

#include <fmt/format.h>

namespace holdwater::cli {
namespace {

const OptionRow help_subject{
    .name = "COMMAND", .help = "the one to tell about; all of them if not given", .holds = Holds::command};
const OptionRow help_man{.name = "--man",
                         .value = "PAGE",
                         .help = "the source of a page of the manual",
                         .choices = {"holdwater", "holdwater-trip"}};
const OptionRow help_completion{.name = "--completion",
                                .value = "SHELL",
                                .help = "the script by which a shell completes commands and options",
                                .choices = shell_names()};

std::string of_all_kinds(Shell shell, const std::vector<Command>& commands) {
    std::vector<std::string_view> kinds;
    for (const facts::FoodKind& food : facts::facts().foods()) {
        kinds.push_back(food.key);
    }
    return completion(shell, commands, kinds);
}

/// What was asked for; empty where that is wrong.
std::string told(Options& options, const std::vector<Command>& commands) {
    const int asked = int{options.has(help_subject)} + int{options.has(help_man)} + int{options.has(help_completion)};
    if (asked > 1) {
        options.fault("help", "option-one-of", "tells one thing a time",
                      "one of: COMMAND, --man PAGE, --completion SHELL");
        return "";
    }
    if (const Given name = options.text(help_subject)) {
        const auto command = command_named(commands, *name);
        options.add(command.problems());
        return command ? command_help(**command) : "";
    }
    const std::size_t faults = options.faults().size();
    const std::string page = options.choice(help_man);
    const std::string shell = options.choice(help_completion);
    if (options.faults().size() > faults) {
        return "";
    }
    if (!page.empty()) {
        const Edition edition{version(), version_date()};
        return page == "holdwater" ? program_page(commands, edition) : trip_page(edition);
    }
    return shell.empty() ? program_help(commands) : of_all_kinds(shell_named(shell), commands);
}

Act read_help(Options& options) {
    return [text = told(options, all_commands())] {
        fmt::print("{}", text);
        return Exit::done;
    };
}

}  // namespace

Command help_command() {
    return {.name = "help",
            .group = headings::program,
            .summary = "tell the commands, or the options of one; write manual and completion",
            .rows = {help_subject, help_man, help_completion},
            .examples = {"help", "help hold", "help --completion bash"},
            .read = read_help};
}

}  // namespace holdwater::cli
