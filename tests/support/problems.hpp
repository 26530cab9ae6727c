// SPDX-License-Identifier: MIT
// Problems in tests: looked for by their code, and shown by it where a check fails.
#pragma once

#include "problem/problem.hpp"

#include <algorithm>
#include <ostream>

namespace holdwater::problem {

inline std::ostream& operator<<(std::ostream& out, Code code) {
    return out << code.text();
}

}  // namespace holdwater::problem

namespace holdwater::support {

/// How many problems have this code.
inline int count_code(const problem::Problems& problems, problem::Code code) {
    return static_cast<int>(
        std::count_if(problems.begin(), problems.end(), [&](const problem::Problem& p) { return p.code == code; }));
}

inline bool has_code(const problem::Problems& problems, problem::Code code) {
    return count_code(problems, code) > 0;
}

}  // namespace holdwater::support
