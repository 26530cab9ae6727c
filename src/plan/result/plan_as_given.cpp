// SPDX-License-Identifier: MIT
#include "facts/facts.hpp"
#include "plan/advice/limits.hpp"
#include "plan/result/progress.hpp"
#include "plan/result/trying.hpp"
#include "plan/search/work.hpp"

#include <memory>
#include <optional>
#include <utility>

namespace holdwater::plan {
namespace {

constexpr Draw draft{512, 1};    // in which marks are compared: no figure of any science
constexpr double clearly = 1.6;  // times as many broken scenarios of a draft as may be: no more of them will hold

/// The search for the plan of one trip, with all that the rest of the plan is worked out from.
struct Found {
    std::shared_ptr<const trip::Trip> trip;
    Effort effort;
    std::optional<Setup> setup;
    std::optional<Searches> searches;
    // What was made, and the scenarios that it was made in.
    std::optional<Ensemble> part;
    std::optional<Ensemble> all;
    std::optional<Trying> looking;
    std::optional<Trying> trying;
    const Ensemble* in = nullptr;
    const Attempt* made = nullptr;

    void look_in_all() {
        all.emplace(*setup, effort.promise);
        trying.emplace(*all, *searches, trip, effort);
        in = &*all;
    }
    void look();
    const Attempt* best_at_edge(const Attempt& found, const Attempt* first);
};

/// What to try is found in a part of the scenarios; what is promised is what holds in all of them.
void Found::look() {
    if (effort.promise.points * effort.promise.shifts <= 2 * draft.points) {
        look_in_all();
        made = trying->best();
        return;
    }
    part.emplace(*setup, draft);
    looking.emplace(*part, *searches, trip, effort);
    const Attempt* const found = looking->best();
    if (found == nullptr) {
        return;
    }
    const bool given_up = outcome_of(*found) >= Outcome::late && !effort.diagnose &&
                          (effort.whether || looking->share_broken(*found) > clearly * allowed_failures());
    if (given_up) {
        in = &*part;
        made = found;
        return;
    }
    look_in_all();
    made = trying->as_in(*found);
    if (outcome_of(*found) < outcome_of(*made)) {
        made = best_at_edge(*found, made);
    }
}

/// What lies at the edge in a part of the scenarios may lie beyond it in all: it is looked for again more and more
/// strictly, and at last in all.
const Attempt* Found::best_at_edge(const Attempt& found, const Attempt* first) {
    BestOf best(first);
    for (const double strict : {0.8, 0.6, 0.4}) {
        const Ensemble stricter(*setup, draft, allowed_failures() * strict);
        Trying strictly(stricter, *searches, trip, effort);
        const Attempt* const other = strictly.best();
        if (other == nullptr || outcome_of(*other) > outcome_of(found) || work_is_enough()) {
            break;  // stricter cannot be had
        }
        best.take(trying->as_in(*other));
        if (best.outcome() <= outcome_of(found)) {
            return best.attempt();
        }
    }
    best.take(trying->best());
    return best.attempt();
}

}  // namespace

FoundPlan look_for_plan(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    count_trip();
    const bool is_enough = work_is_enough();
    const WorkBound bound(facts::facts().value("search.most-of-a-try"));
    const auto found = std::make_shared<Found>();
    found->trip = std::move(trip);
    found->effort = effort;
    // Who has looked for long enough is told in a part of the scenarios why it does not hold.
    found->effort.diagnose = effort.diagnose && !is_enough;
    auto setup = set_up(*found->trip);
    if (!setup) {
        return [faults = setup.problems()](const Effort&) { return problem::Result<Plan>(faults); };
    }
    found->setup = std::move(setup).value();
    found->searches.emplace(*found->setup, effort.search);
    found->look();
    return [found](const Effort& asked) {
        return found->made != nullptr ? completed(*found->in, *found->made, asked)
                                      : fill_impossible(*found->setup, asked.diagnose);
    };
}

problem::Result<Plan> plan_as_given(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    return look_for_plan(std::move(trip), effort)(effort);
}

bool may_be_ready(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    const auto setup = set_up(*trip);
    if (!setup) {
        return false;
    }
    Searches searches(*setup, effort.search);
    const Ensemble ensemble(*setup, effort.promise);
    return Trying(ensemble, searches, trip, effort).may_be_ready();
}

}  // namespace holdwater::plan
