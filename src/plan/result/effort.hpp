// SPDX-License-Identifier: MIT
// How much is asked of a plan, and the two ways to have one: as the trip says it, or as a good cook would choose it.
#pragma once

#include "plan/search/ensemble.hpp"
#include "units/quantity.hpp"

#include <functional>
#include <memory>
#include <optional>

namespace holdwater::plan {

/// How hard to think: scenarios while searching, scenarios for the promise, and whether to look for advice.
struct Effort {
    Draw search{256, 1};
    Draw promise = full_draw();
    bool advise = true;
    bool what_ifs = true;        // answer those of the trip
    bool whether = false;        // the first plan that holds will do: for whoever asks only whether there is one
    bool schedule_only = false;  // of a good plan no more than fill, foods and top-ups: whether it holds, and how
    bool last_chance = false;    // of that as well how late the fire may be at all, not only whether by the slack
    bool for_cards = true;       // work out what only cards print: hold tables
    /// Nothing heavier for the cook than this is of interest.
    std::optional<units::Duration> lighter_than = std::nullopt;
    bool unwoken = false;  // nor what somebody must wake for
    bool ways = true;      // look for others that hold too, to choose from
    bool choose = true;    // the start, where the trip leaves it open
    bool compare = true;   // of the choices of a start keep the lightest; else the first that holds
    bool diagnose = true;  // find the limit that binds where the bath cannot be held; costs about one search
};

/// A good plan, or every limit that broke, each with advice that was tried and works.
problem::Result<Plan> make_plan(const trip::Trip& trip, const Effort& effort);
/// The same of a trip that the plan then shares; it must not change any more but in what is only printed.
problem::Result<Plan> make_plan(std::shared_ptr<const trip::Trip> trip, const Effort& effort);

/// The plan of this trip to the letter: the fire is lit at trip.from, wishes are met or it is refused, and no advice is
/// sought. What chooses and advises is made of this.
problem::Result<Plan> plan_as_given(std::shared_ptr<const trip::Trip> trip, const Effort& effort);

/// The same in two steps, for whoever compares plans and keeps one: looks for the plan at once, and what it gives back
/// works out so much of it as is asked for. Without `diagnose` a trip that clearly does not hold is given up in a part
/// of the scenarios; the rest of that first effort counts for the search alone.
using FoundPlan = std::function<problem::Result<Plan>(const Effort& effort)>;
FoundPlan look_for_plan(std::shared_ptr<const trip::Trip> trip, const Effort& effort);

/// False if its food cannot be ready in time with the fire lit at trip.from, however hot the bath is kept, nor with any
/// later fire, or if it may not be planned at all. Costs a small part of a plan.
bool may_be_ready(std::shared_ptr<const trip::Trip> trip, const Effort& effort);

}  // namespace holdwater::plan
