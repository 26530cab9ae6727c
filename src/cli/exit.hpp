// SPDX-License-Identifier: MIT
// What an outcome means to whoever started the program: the one way from problems to exit code.
#pragma once

#include "problem/problem.hpp"

#include <array>
#include <string_view>

namespace holdwater::cli {

enum class Exit {
    done = 0,
    refused = 1,    // the plan does not hold: no cards; advice on standard output
    bad_input = 2,  // or bad usage
    check = 3,      // done, but the reader must change or check an input
    our_fault = 70
};

/// What help and README say of each.
struct ExitRow {
    Exit exit = Exit::done;
    std::string_view means;
};

inline constexpr std::array exit_rows{
    ExitRow{Exit::done, "done"},
    ExitRow{Exit::refused, "refused: the plan does not hold, or the log says throw it away"},
    ExitRow{Exit::bad_input, "bad input or usage"},
    ExitRow{Exit::check, "done, but something in the input should be checked or changed"},
    ExitRow{Exit::our_fault, "our own fault"}};

/// By the errors whose fault is worst: ours before the input's before the plan's. Without an error: check if anything
/// is a warning, else done.
Exit exit_for(const problem::Problems& problems);

/// Of several outcomes, the one that most needs looking at.
Exit worse(Exit a, Exit b);

}  // namespace holdwater::cli
