// SPDX-License-Identifier: MIT
// The fill of a plan as parts of boiling water to one part cold: how to fill when nothing can be read.
#pragma once

#include "plan/result/plan.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::card {

struct Mixing {
    /// To one part cold, by volume: the litres of the plan, which make up for the box and the wait between pots. More
    /// than a mix of both at once would take.
    double parts = 0.0;
    std::optional<double> with_ice_water;  // the same warmth with ice water as the cold part
};

/// Nothing where the fill takes no cold water.
std::optional<Mixing> mixing_of(const plan::Plan& plan);

}  // namespace holdwater::card
