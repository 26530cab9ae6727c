// SPDX-License-Identifier: MIT
// Sets of rules by the names that trip files use.
#pragma once

#include "facts/names.hpp"

#include <doctest/doctest.h>

#include <optional>
#include <string_view>

namespace holdwater::support {

inline facts::Ruleset ruleset(std::string_view name) {
    const std::optional<facts::Ruleset> found = facts::from_name<facts::Ruleset>(name);
    REQUIRE_MESSAGE(found.has_value(), "no set of rules is called ", name);
    return *found;
}

}  // namespace holdwater::support
