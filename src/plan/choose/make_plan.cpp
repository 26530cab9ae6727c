// SPDX-License-Identifier: MIT
// From a trip to a plan: chooses what the trip leaves open, and says what would hold where nothing does.
#include "facts/facts.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/choose/bend_wishes.hpp"
#include "plan/result/effort.hpp"
#include "plan/search/later_start.hpp"
#include "safety/refusals.hpp"

#include <fmt/format.h>

namespace holdwater::plan {
namespace {

void note_later_start(Plan& plan) {
    if (const auto later = later_start(plan)) {
        plan.notes.push_back(problem::note(
            "later-start",
            fmt::format("with the fire lit only at {} the night would ask for {} instead of {} of the cook's wakings",
                        later->from.clock_24(), later->wakes, wakes_of(plan)),
            fmt::format("from = {}; the raw food must be kept at {} or below until it goes in", later->from.iso(),
                        safety::in_both(facts::facts().temperature("raw.cold")))));
    }
}

}  // namespace

problem::Result<Plan> make_plan(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    if (trip->light_fire && *trip->light_fire != trip->from) {
        trip::Trip lit = *trip;
        lit.first = trip->from;
        lit.from = *trip->light_fire;
        trip = std::make_shared<const trip::Trip>(std::move(lit));
    }
    auto plan = plan_as_given(trip, effort);
    if (!effort.advise) {
        return plan;
    }
    if (!plan) {
        Feasible feasible;
        auto bent = plan_of_bent_wishes(*trip, plan.problems(), effort, feasible);
        return bent ? problem::Result<Plan>(*std::move(bent)) : with_advice(*trip, plan.problems(), feasible);
    }
    Plan good = std::move(plan).value();
    note_later_start(good);
    return good;
}

problem::Result<Plan> make_plan(const trip::Trip& trip, const Effort& effort) {
    return make_plan(std::make_shared<const trip::Trip>(trip), effort);
}

problem::Result<Plan> make_plan(const trip::Trip& trip) {
    return make_plan(trip, Effort{});
}

}  // namespace holdwater::plan
