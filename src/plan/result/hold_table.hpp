// SPDX-License-Identifier: MIT
// Hold times by thickness and bath, cautious, for the Hold card.
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::plan {

/// Time since food in after which a piece of this food, of another thickness, is safe in a bath that never reads below
/// `bath`: answer::HoldTime::allowed, with the trip's thermometer.
std::optional<units::Duration> safe_hold(const Plan& plan, const FoodPlan& food, units::Length thickness,
                                         units::Temperature bath);

/// The thickest piece that becomes safe and comes up in time in this bath, down to 1 mm; nothing under 5 mm.
std::optional<units::Length> thickest(const Plan& plan, const FoodPlan& food, units::Temperature bath);

/// Works out FoodPlan::hold, own_hold and thickest, from levels, piece, standard and times. The thickest is that of the
/// table's first bath, to the millimetre as it is printed, and never thinner than the food's own piece: the plan has
/// judged that one in all its scenarios.
void work_out_hold(const Plan& plan, FoodPlan& food);

/// Hold times in these baths, rising, of a piece each 5 mm: as thick as pieces of this sort may come and as the longest
/// card shows, no thicker than FoodPlan::thickest, where that is known, nor than the hottest of the baths allows.
HoldTable hold_every_5_mm(const Plan& plan, const FoodPlan& food, const std::vector<units::Temperature>& baths);

}  // namespace holdwater::plan
