// SPDX-License-Identifier: MIT
// Whether a later fire spares the cook a night.
#pragma once

#include "plan/result/plan.hpp"

#include <cstddef>
#include <optional>

namespace holdwater::plan {

/// Times that somebody must wake for.
std::size_t wakes_of(const Plan& plan);

struct LaterStart {
    units::LocalTime from;  // of the trip, later
    std::size_t wakes = 0;
};

/// The start after the trip's own, to the hour, with the fewest wakings (filling in the sleep window is one), if that
/// is fewer than the plan's; it holds in as many scenarios. Nothing for a plan without wakings. The plan keeps its
/// start, since food that goes in at once needs no ice; the cook may choose.
std::optional<LaterStart> later_start(const Plan& plan);

}  // namespace holdwater::plan
