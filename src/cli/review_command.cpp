// SPDX-License-Identifier: MIT
#include <CLI/CLI.hpp>

#include "cli/app.hpp"

namespace holdwater::cli {

Command add_review(CLI::App& program) {
    CLI::App* line = program.add_subcommand("review", "");
    return {line, [] { return Exit::our_fault; }};
}

}  // namespace holdwater::cli
