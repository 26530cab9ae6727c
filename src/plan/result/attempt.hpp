// SPDX-License-Identifier: MIT
// A schedule that was tried, and the plan that is made of it. Inside plan/ only.
#pragma once

#include "plan/result/effort.hpp"
#include "plan/search/empty_acts.hpp"

#include <memory>

namespace holdwater::plan {

/// What was tried of a trip, with as much of a plan as tells whether it holds, and what then is against it.
struct Attempt {
    Tried tried;
    Plan plan;
    problem::Problems broken;  // which limit binds is not said yet
};

Attempt judged(const Ensemble& ensemble, const std::shared_ptr<const trip::Trip>& trip, Tried tried);

/// The rest of the plan of an attempt that nothing is against, as far as the effort asks; else what is against it.
problem::Result<Plan> completed(const Ensemble& ensemble, const Attempt& made, const Effort& effort);

}  // namespace holdwater::plan
