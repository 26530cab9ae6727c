// SPDX-License-Identifier: MIT
// What is done when, as cards ask for its time: "act" of their figures, by number.
#pragma once

#include "plan/result/plan.hpp"

namespace holdwater::card {

/// The first event of that time, from 1; std::logic_error where nothing is done then.
int act_at(const plan::Plan& plan, units::LocalTime time);

}  // namespace holdwater::card
