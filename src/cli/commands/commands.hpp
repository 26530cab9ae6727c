// SPDX-License-Identifier: MIT
// Every command, each defined in the file of its name: what it is called, its options and what it does.
#pragma once

#include "cli/line/command.hpp"

#include <vector>

namespace holdwater::cli {

Command new_command();
Command quick_command();
Command plan_command();
Command cards_command();
Command mend_command();
Command review_command();
Command gauge_command();
Command hold_command();
Command mix_command();
Command boil_command();
Command fingertip_command();
Command class_command();
Command sources_command();
Command schema_command();
Command help_command();

/// In the order in which help lists them.
std::vector<Command> all_commands();

}  // namespace holdwater::cli
