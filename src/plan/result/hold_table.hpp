// SPDX-License-Identifier: MIT
// Hold times by thickness and bath, cautious, for the Hold card and its ruler.
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::plan {

/// Time since food in after which a piece of this food, of another thickness, is safe in a bath that never reads below
/// `bath`, by the slow reading; nothing if it never is, or comes up too slowly: over 6 h, or over 3 h where it must be
/// finished over the fire. A thermometer that reads too high by its error is allowed for.
std::optional<units::Duration> safe_hold(const Plan& plan, const FoodPlan& food, units::Length thickness,
                                         units::Temperature bath);

/// The lowest whole-degree bath, from the action line up, in which the food's own piece becomes safe.
units::Temperature first_hold_bath(const Plan& plan, const FoodPlan& food);

/// The thickest piece that becomes safe and comes up in time in this bath, down to 1 mm; nothing under 5 mm.
std::optional<units::Length> thickest(const Plan& plan, const FoodPlan& food, units::Temperature bath);

/// That of the trip's own bath, and never thinner than the food's own piece, to the millimetre as it is printed: the
/// plan has judged that one in all its scenarios and in its own shape, while this goes by a slab without edges.
std::optional<units::Length> thickest_here(const Plan& plan, const FoodPlan& food);

HoldTable hold_table(const Plan& plan, const FoodPlan& food);

/// A tick every so many millimetres, until pieces come up too slowly in this bath.
struct RulerTick {
    units::Length thickness;
    units::Duration hold;
};
struct HoldRuler {
    units::Temperature bath;
    std::vector<RulerTick> ticks;
    units::Length too_thick;  // from here on: split it
};
HoldRuler hold_ruler(const Plan& plan, const FoodPlan& food, units::Temperature bath, units::Length step,
                     units::Length longest);

}  // namespace holdwater::plan
