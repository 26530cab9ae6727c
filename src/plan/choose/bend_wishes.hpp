// SPDX-License-Identifier: MIT
// How done the food gets is a wish: where it cannot be met it bends by the least that works, and the plan says so.
#pragma once

#include "plan/advice/mend.hpp"

#include <memory>
#include <optional>

namespace holdwater::plan {

/// The plan with the tolerances, and where these are not enough the targets, raised by the fewest steps with which it
/// holds; what was asked stands in Plan::bent and in its notes (wish-bent). Nothing where more than that is against the
/// trip, or where it is strict. `problems`: why it does not hold as it is.
std::optional<Plan> plan_of_bent_wishes(const trip::Trip& trip, const problem::Problems& problems, const Effort& effort,
                                        Feasible& feasible);

/// The same as a mend: the trip with the wishes as such a plan bent them.
Mend mend_of_bent(const trip::Trip& trip, const Plan& bent);

}  // namespace holdwater::plan
