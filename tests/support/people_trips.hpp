// SPDX-License-Identifier: MIT
// Trip files as people would write them who cook outdoors: camp cooks, scout leaders, clubs, classes, families. With
// remarks, in their own units, some clumsy, all valid.
#pragma once

#include <cstdint>
#include <string>

namespace holdwater::support {

/// The whole text of a trip file, always the same for a seed.
std::string people_trip(std::uint64_t seed);

}  // namespace holdwater::support
