// SPDX-License-Identifier: MIT
// What `mend` found, as JSON.
#pragma once

#include "problem/problem.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::cli {

struct Mended {
    bool holds_already = false;
    std::optional<std::string> file;   // that was written
    std::vector<std::string> changes;  // as they stand in it, with words
    problem::Problems problems;        // why it did not hold, and why nothing mends it
};

std::string mend_json(const std::string& trip, const Mended& mended);

}  // namespace holdwater::cli
