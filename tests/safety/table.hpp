// SPDX-License-Identifier: MIT
// Cases kept as rows of a text file, cells apart by " | ".
#pragma once

#include "safety/standard.hpp"

#include <string>
#include <vector>

namespace holdwater::support {

using Row = std::vector<std::string>;

/// Rows of tests/safety/<name>; lines that start with # are left out.
std::vector<Row> rows_of(const std::string& name);

/// The request of the cells kind, cut, target, rules, eaters, thermometer, which start at cell 1.
safety::Request request_of(const Row& row);

}  // namespace holdwater::support
