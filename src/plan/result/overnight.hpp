// SPDX-License-Identifier: MIT
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::plan {

/// True if somebody sleeps while food is in the bath: the trip names hours of sleep, and they fall between food in and
/// the meal.
bool overnight(const Plan& plan);

}  // namespace holdwater::plan
