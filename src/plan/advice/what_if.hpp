// SPDX-License-Identifier: MIT
// What if it gets colder, the meal is late, the fire is out: each question of the trip answered by working it through.
#pragma once

#include "plan/result/effort.hpp"
#include "plan/result/plan.hpp"
#include "plan/search/schedule.hpp"

namespace holdwater::plan {

/// One answer for each [[what_if]] of the trip, in its order. Colder and later: the trip so changed is planned anew.
/// Fire out: it goes out just when a top-up is due, which is the worst moment. Several in one are taken together.
std::vector<WhatIfAnswer> answers_to_what_ifs(const Ensemble& ensemble, const Schedule& schedule, const Plan& plan);

}  // namespace holdwater::plan
