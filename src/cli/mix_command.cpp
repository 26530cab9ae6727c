// SPDX-License-Identifier: MIT
#include <CLI/CLI.hpp>

#include "cli/app.hpp"

namespace holdwater::cli {

Command add_mix(CLI::App& program) {
    CLI::App* line = program.add_subcommand("mix", "");
    return {line, [] { return Exit::our_fault; }};
}

}  // namespace holdwater::cli
