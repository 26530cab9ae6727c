// SPDX-License-Identifier: MIT
// From a trip to a plan: chooses what the trip leaves open, and says what would hold where nothing does.
#include "plan/advice/remedy.hpp"
#include "plan/choose/bend_wishes.hpp"
#include "plan/choose/ways.hpp"
#include "plan/result/effort.hpp"

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
    std::optional<Plan> best;
    for (std::size_t i = 0; i < std::min(choices.size(), most); ++i) {
        if (best && burden_of(*best).weight() <= choices[i].burden.weight()) {
            break;
        }
        auto plan = plan_as_given(choices[i].trip, effort);
        if (plan && (!best || burden_of(*plan).weight() < burden_of(*best).weight())) {
            best = std::move(plan).value();
        }
    }
    if (!best) {
        return plan_as_given(trip, effort);
    }
    if (effort.ways) {
        best->ways = ways_of(*trip, *best, effort);
    }
    return *std::move(best);
}

}  // namespace

problem::Result<Plan> make_plan(Shared trip, const Effort& effort) {
    if (trip->light_fire && *trip->light_fire != trip->from) {
        trip = std::make_shared<const trip::Trip>(lit_at(*trip, *trip->light_fire));
    }
    const bool open = effort.choose && !trip->light_fire && trip->boxes.size() == 1 && !trip->foods.empty();
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
