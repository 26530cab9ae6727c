// SPDX-License-Identifier: MIT
#include "cli/commands/commands.hpp"

namespace holdwater::cli {

std::vector<Command> all_commands() {
    std::vector<Command> all;
    for (const auto command : {new_command, quick_command, plan_command, cards_command, mend_command, review_command,
                               gauge_command, hold_command, mix_command, boil_command, fingertip_command, class_command,
                               sources_command, schema_command, help_command}) {
        all.push_back(command());
    }
    return all;
}

}  // namespace holdwater::cli
