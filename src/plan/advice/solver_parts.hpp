// SPDX-License-Identifier: MIT
// What the files of the solver share. Inside plan/advice only.
#pragma once

#include "plan/advice/mend.hpp"

#include <cstddef>
#include <functional>

namespace holdwater::plan {

constexpr std::size_t tries_at_once = 4;  // side by side, before what was found bounds the next

/// Whether a change can do anything about what stands against a trip.
bool helps(Lever::Kind kind, Against against);

/// The fewest steps of a lever with which `holds` is true, the others being as they are; true for the steps given.
void pull_back(Steps& steps, std::size_t lever, const std::function<bool(const Steps&)>& holds);

}  // namespace holdwater::plan
