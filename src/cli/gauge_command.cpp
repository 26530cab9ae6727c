// SPDX-License-Identifier: MIT
#include <CLI/CLI.hpp>

#include "cli/app.hpp"

namespace holdwater::cli {

Command add_gauge(CLI::App& program) {
    CLI::App* line = program.add_subcommand("gauge", "");
    return {line, [] { return Exit::our_fault; }};
}

}  // namespace holdwater::cli
