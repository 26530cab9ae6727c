// SPDX-License-Identifier: MIT
// The manual: two pages in the language of man(7), made from the rows of the commands and the keys of trip files.
#pragma once

#include "cli/line/command.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// What stands at the foot of a page.
struct Edition {
    std::string version;
    std::string date;  // 2026-11-30: when that version was made, not the page
};

/// holdwater.1: every command with its options, examples and exit codes.
std::string program_page(const std::vector<Command>& commands, const Edition& edition);

/// holdwater-trip.5: every key of a trip file, and the shortest one.
std::string trip_page(const Edition& edition);

}  // namespace holdwater::cli
