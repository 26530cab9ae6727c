// SPDX-License-Identifier: MIT
#include "cli/app.hpp"

#include <CLI/CLI.hpp>

#include <vector>

namespace holdwater::cli {

Exit run(int argc, char** argv) {
    CLI::App program{"Plans a hot-water-bath meal in an insulated box and prints the plan as pocket cards.",
                     "holdwater"};
    program.set_version_flag("--version", "holdwater " HOLDWATER_VERSION);
    program.require_subcommand(1);
    std::vector<Command> commands;
    for (const auto add :
         {add_cards, add_plan, add_review, add_gauge, add_hold, add_boil, add_mix, add_touch, add_new, add_sources}) {
        commands.push_back(add(program));
    }
    try {
        program.parse(argc, argv);
    } catch (const CLI::ParseError& stop) {
        return program.exit(stop) == 0 ? Exit::done : Exit::bad_input;
    }
    for (const Command& command : commands) {
        if (command.line->parsed()) {
            return command.act();
        }
    }
    return Exit::our_fault;  // CLI11 asked for exactly one
}

}  // namespace holdwater::cli
