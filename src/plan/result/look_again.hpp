// SPDX-License-Identifier: MIT
// When to read the bath again, so that there is still time for the pots.
#pragma once

#include "plan/result/left_boxes.hpp"
#include "plan/result/levels.hpp"
#include "units/amount.hpp"

namespace holdwater::plan {

struct LookAgain {
    units::Temperature line;    // at this reading or less the fire is lit
    units::Duration at_mark;    // after the mark was read
    units::Duration over_line;  // after anything over the line was read
};

struct LooksOf {
    const Levels& levels;
    units::Duration round;  // from fire to pour
    units::Duration rough;  // how long the mark keeps in wind and cold
    units::System units;    // as printed
};

/// Whoever looks again that late and lights the fire at the line or below it pours before the bath is under the floor,
/// in all but the allowed share of scenarios. No look is asked for sooner than `look.soonest`: the line of a box that
/// falls too fast for that lies higher, at the first whole degree over which there is time for it; it is never lower
/// than the line of the rules, and under the mark.
LookAgain look_again(const LeftBoxes& boxes, const LooksOf& of);

/// The first whole degree over a line, in the system that is printed first.
units::Temperature first_over(units::Temperature line, units::System units);

}  // namespace holdwater::plan
