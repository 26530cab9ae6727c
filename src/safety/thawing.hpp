// SPDX-License-Identifier: MIT
// How long frozen food takes to thaw, as a hint beside a refusal: no plan goes by it.
#pragma once

#include "units/quantity.hpp"

#include <optional>

namespace holdwater::safety {

struct Thawing {
    /// In its bag in cold water that is changed every `change`; nothing: heavier than any piece that a figure was read
    /// for.
    std::optional<units::Duration> in_water;
    units::Duration change;
    units::Duration in_the_cold;  // at facts raw.cold or below, rounded up to whole days
};

/// Of one piece, from its mass, by the figures thaw.* (facts texture.toml). The mass must be above zero.
Thawing thawing_of(units::Mass piece);

}  // namespace holdwater::safety
