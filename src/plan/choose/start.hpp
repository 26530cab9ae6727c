// SPDX-License-Identifier: MIT
// When the fire is lit, and with how much of the water: what the trip leaves open is what a good cook would choose.
#pragma once

#include "plan/result/effort.hpp"
#include "plan/search/burden.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace holdwater::plan {

/// A way to cook the trip that holds in few scenarios, with nothing left open.
struct Choice {
    std::shared_ptr<const trip::Trip> trip;
    Burden burden;
};

/// The trip with its fire lit then, at or after its first moment.
trip::Trip lit_at(const trip::Trip& trip, units::LocalTime at);

/// The last moment at which a fire can be of any use: one round of pots is poured, and the food is in for as long as it
/// must be, before the first that goes in or comes out by the clock. May lie before the trip's first moment.
units::LocalTime last_start(const trip::Trip& trip);

/// Less water than the box is given, the most first, with which its pots are about a round or more sooner through; none
/// where one round does. A fill that takes long makes food late, and pots that are small against the bath give it no
/// mark.
std::vector<units::Volume> waters_of_fewer_rounds(const trip::Trip& trip);

/// What is asked of a way besides that it holds.
struct Asked {
    bool unwoken = false;                                        // nobody gets up in the sleep window
    std::optional<units::Duration> lighter_than = std::nullopt;  // weight of its burden
};

/// The ways that were found to hold, the one that asks least of the cook first: over the start, from the trip's first
/// moment until it is too late for the meal, and over the water, never more than the trip gives. Empty where no start
/// holds, in few scenarios.
std::vector<Choice> choices_of(const trip::Trip& trip, const Asked& asked = {});

}  // namespace holdwater::plan
