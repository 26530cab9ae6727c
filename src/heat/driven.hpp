// SPDX-License-Identifier: MIT
// A food in a bath whose temperatures are given, such as the readings of a log: the other way round from Bath, which
// works the temperatures out.
#pragma once

#include "heat/body.hpp"
#include "units/history.hpp"
#include "units/quantity.hpp"

namespace holdwater::heat {

struct Driven {
    units::History core;
    units::History mean;  // volume mean; jumps where the bath does, by the share that follows it at once
};

/// Core and mean of a food from `from`, when it goes in at `start`, to `to`, both on the clock of the bath. Exact at
/// every point for a bath that is linear between its points and jumps where two stand at one moment; points lie close
/// enough that a straight line between them is good to 0.01 K. `bath` has at least one point and is constant outside
/// its points. With `to` not after `from`: the start alone.
Driven driven(const Modes& modes, units::Temperature start, const units::History& bath, units::Duration from,
              units::Duration to);

}  // namespace holdwater::heat
