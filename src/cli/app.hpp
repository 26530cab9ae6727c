// SPDX-License-Identifier: MIT
// The whole program, from its arguments to its exit code.
#pragma once

#include "cli/exit.hpp"

namespace holdwater::cli {

/// Reads the command line and does what it asks. Every fault of the line itself is reported here, in the same form for
/// all commands. Bad input too: an answer that could not be written to standard output.
Exit run(int argc, char** argv);

}  // namespace holdwater::cli
