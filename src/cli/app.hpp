// SPDX-License-Identifier: MIT
// The list of commands. Each command's own file defines its options, beside what it does.
#pragma once

#include "cli/exit.hpp"

#include <functional>

namespace CLI {
class App;
}

namespace holdwater::cli {

/// A command of the program: its place in the command line and what it does once the line is read.
struct Command {
    CLI::App* line = nullptr;
    std::function<Exit()> act;
    bool tells_unknown_words = false;  // tells words that no option took itself, with all its other faults; else run() does
};

/// Each adds one command with its options.
Command add_cards(CLI::App& program);
Command add_plan(CLI::App& program);
Command add_class(CLI::App& program);
Command add_review(CLI::App& program);
Command add_gauge(CLI::App& program);
Command add_hold(CLI::App& program);
Command add_boil(CLI::App& program);
Command add_mix(CLI::App& program);
Command add_touch(CLI::App& program);
Command add_new(CLI::App& program);
Command add_sources(CLI::App& program);

/// Reads the command line and does what it asks. Every fault of the line itself is told here, in the same form for all
/// commands. Bad input too: an answer that could not be written to standard output.
Exit run(int argc, char** argv);

}  // namespace holdwater::cli
