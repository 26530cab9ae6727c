// SPDX-License-Identifier: MIT
// From a trip to a plan: chooses what the trip leaves open, and says what would hold where nothing does.
#include "facts/facts.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/choose/bend_wishes.hpp"
#include "plan/choose/ways.hpp"
#include "plan/result/effort.hpp"
#include "plan/search/work.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace holdwater::plan {
namespace {

using Shared = std::shared_ptr<const trip::Trip>;

/// The plan that asks least of the cook. What holds in few scenarios only is passed over for the next best, and so is
/// what asks more than that in all of them.
problem::Result<Plan> chosen(const Shared& trip, const Effort& effort) {
    constexpr std::size_t most = 4;
    const std::vector<Choice> choices = choices_of(*trip);
    Effort brief = effort;
    brief.schedule_only = true;
    brief.last_chance = !effort.schedule_only;  // so that it weighs what the whole plan does
    brief.diagnose = false;
    FoundPlan best;
    std::optional<units::Duration> weight;
    for (std::size_t i = 0; i < std::min(choices.size(), most); ++i) {
        if (weight && *weight <= choices[i].burden.weight()) {
            break;
        }
        FoundPlan found = look_for_plan(choices[i].trip, brief);
        const auto plan = found(brief);
        if (plan && (!weight || burden_of(*plan).weight() < *weight)) {
            weight = burden_of(*plan).weight();
            best = std::move(found);
            if (!effort.compare) {
                break;
            }
        }
    }
    if (!best) {
        return plan_as_given(trip, effort);
    }
    auto plan = best(effort);
    if (!plan || !effort.ways) {
        return plan;
    }
    Plan with_ways = std::move(plan).value();
    with_ways.ways = ways_of(*trip, with_ways, effort);
    return with_ways;
}

}  // namespace

problem::Result<Plan> make_plan(Shared trip, const Effort& effort) {
    if (trip->light_fire && *trip->light_fire != trip->from) {
        trip = std::make_shared<const trip::Trip>(lit_at(*trip, *trip->light_fire));
    }
    const bool open = effort.choose && !trip->light_fire && trip->boxes.size() == 1 && !trip->foods.empty();
    // Whoever has a bound keeps to that.
    std::optional<WorkBound> bound;
    if (WorkBound::current() == nullptr) {
        bound.emplace(facts::facts().value("search.most-work"));
    }
    auto plan = open ? chosen(trip, effort) : plan_as_given(trip, effort);
    if (plan || !effort.advise) {
        return plan;
    }
    Feasible feasible;
    auto bent = plan_of_bent_wishes(*trip, plan.problems(), effort, feasible);
    return bent ? problem::Result<Plan>(*std::move(bent)) : with_advice(*trip, plan.problems(), feasible);
}

problem::Result<Plan> make_plan(const trip::Trip& trip, const Effort& effort) {
    return make_plan(std::make_shared<const trip::Trip>(trip), effort);
}

problem::Result<Plan> make_plan(const trip::Trip& trip) {
    return make_plan(trip, Effort{});
}

}  // namespace holdwater::plan
