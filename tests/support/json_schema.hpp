// SPDX-License-Identifier: MIT
// Checks a JSON value against the part of JSON Schema that layouts/schemas use. A word of it that is not known here is
// thrown, so that no part of a schema goes unchecked.
#pragma once

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace holdwater::support {

/// What is wrong, each with the path of the value, such as "/foods/0/kill: not a number"; empty: nothing is.
std::vector<std::string> schema_faults(const nlohmann::json& value, const nlohmann::json& schema);

}  // namespace holdwater::support
