// SPDX-License-Identifier: MIT
#include "cli/exit.hpp"

#include <algorithm>
#include <array>

namespace holdwater::cli {
namespace {

Exit exit_of_one(const problem::Problem& problem) {
    if (problem.severity != problem::Severity::error) {
        return problem.severity == problem::Severity::warning ? Exit::check : Exit::done;
    }
    switch (problem.code.whose()) {
        case problem::Whose::input:
            return Exit::bad_input;
        case problem::Whose::plan:
            return Exit::refused;
        case problem::Whose::ours:
            return Exit::our_fault;
    }
    return Exit::our_fault;
}

}  // namespace

Exit exit_for(const problem::Problems& problems) {
    Exit worst = Exit::done;
    for (const problem::Problem& one : problems) {
        worst = worse(worst, exit_of_one(one));
    }
    return worst;
}

Exit worse(Exit a, Exit b) {
    const auto weight = [](Exit exit) {
        constexpr std::array<Exit, 5> order{Exit::done, Exit::check, Exit::refused, Exit::bad_input, Exit::our_fault};
        return std::find(order.begin(), order.end(), exit) - order.begin();
    };
    return weight(a) > weight(b) ? a : b;
}

}  // namespace holdwater::cli
