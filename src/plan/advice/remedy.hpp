// SPDX-License-Identifier: MIT
// When a plan does not hold: what would mend it, each advice tried before it is given.
#pragma once

#include "plan/search/ensemble.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdwater::plan {

/// How hard to think: scenarios while searching, scenarios for the promise, and whether to look for advice.
struct Effort {
    Draw search{256, 1};
    Draw promise = full_draw();
    bool advise = true;
    bool what_ifs = true;        // answer those of the trip
    bool schedule_only = false;  // of a good plan no more than fill, foods and top-ups: whether it holds, and how
    bool for_cards = true;       // work out what only cards print: hold tables
    std::optional<std::size_t> fewer_wakes = std::nullopt;  // no plan that wakes the cook so often or more
    bool diagnose = true;  // find the limit that binds where the bath cannot be held; costs about one search
};

problem::Result<Plan> make_plan(const trip::Trip& trip, const Effort& effort);
/// The same of a trip that the plan then shares; it must not change any more but in what is only printed.
problem::Result<Plan> make_plan(std::shared_ptr<const trip::Trip> trip, const Effort& effort);

struct Remedy {
    std::string advice;
    trip::Trip changed;  // holds by the same scenarios as any plan
};

/// What would make a trip hold, the cheapest for the cook first: the smallest single change of each sort, or where no
/// single one is enough, two together.
std::vector<Remedy> remedies_of(const trip::Trip& trip);

/// The problems with, as notes behind them, what remedies_of found.
problem::Problems with_advice(const trip::Trip& trip, problem::Problems problems);

}  // namespace holdwater::plan
