// SPDX-License-Identifier: MIT
#include "safety/thawing.hpp"

#include "facts/facts.hpp"

#include <cmath>

namespace holdwater::safety {

Thawing thawing_of(units::Mass piece) {
    const facts::Facts& facts = facts::facts();
    Thawing thawing;
    thawing.change = facts.duration("thaw.water.change");
    if (piece.si() <= facts.value("thaw.water.light-mass")) {
        thawing.in_water = facts.duration("thaw.water.light");
    } else if (piece.si() <= facts.value("thaw.water.heavy-mass")) {
        thawing.in_water = facts.duration("thaw.water.heavy");
    }
    const units::Duration day = facts.duration("thaw.fridge");
    thawing.in_the_cold = day * std::ceil(piece.si() / facts.value("thaw.fridge.mass") - 1e-9);
    return thawing;
}

}  // namespace holdwater::safety
