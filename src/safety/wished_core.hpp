// SPDX-License-Identifier: MIT
#pragma once

#include "facts/facts.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::safety {

/// How far a food is cooked for somebody who does not say it.
struct WishedCore {
    units::Temperature target;
    bool over_fire = false;  // the bath goes as far as it may be asked to, the fire does the rest
};

/// Whole red meat, fish and farmed game: what the rules' country tells its consumers. Poultry and all else: the lowest
/// target of the rules, and finished over the fire to the full temperature. Nothing: the rules refuse such food.
std::optional<WishedCore> wished_core(const facts::FoodKind& kind, facts::Ruleset rules);

}  // namespace holdwater::safety
