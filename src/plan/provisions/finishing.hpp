// SPDX-License-Identifier: MIT
// Finishing over the fire, by the clock: when the water for it is put on and when the food leaves the bath, so that all
// of it is hot all through at the meal.
#pragma once

#include "answer/finish/finish_time.hpp"
#include "units/local_time.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::plan {

struct Setup;
struct Plan;
struct FoodPlan;

struct Finishing {
    answer::FinishTime one;       // a piece of this food
    int lots = 1;                 // potfuls of the whole meal, one after the other
    int pots = 1;                 // on the fire for it
    units::Duration takes;        // all of them, for every food of the meal that is finished
    units::Volume water;          // to boil for the whole meal
    units::LocalTime light_fire;  // under the pots of water
    units::LocalTime out;         // the first piece out of the bath
};

/// Water to boil for all that is finished, every meal together.
units::Volume water_to_finish(const Plan& plan);

/// How long a piece of this food takes over the fire of this trip; nothing where it cannot be finished there.
std::optional<answer::FinishTime> finish_time_of(const Setup& setup, const FoodPlan& food);

/// Gives every food of the plan with a finish its times; one that cannot be finished is left without (see
/// finish_time_of). The pots are all there but those of the side dishes. Foods of one meal share them.
void time_finishing(const Setup& setup, Plan& plan);

}  // namespace holdwater::plan
