// SPDX-License-Identifier: MIT
#include "plan/advice/limits.hpp"
#include "plan/result/attempt.hpp"
#include "plan/search/schedule.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::plan {
namespace {

/// Searches with few scenarios and tries the find in many. If it holds in the few only, the search is repeated more
/// strictly, since what lies at the edge in the few may lie beyond it in the many. The last try is what is judged.
std::optional<Tried> search_and_try(const Ensemble& ensemble, const Effort& effort, const Wanted& wanted) {
    std::optional<Tried> tried;
    for (const double strictness : {1.0, 0.8, 0.5, 0.2}) {
        const Ensemble search(ensemble.setup(), effort.search, ensemble.allowed() * strictness);
        const auto schedule = make_schedule(search, wanted);
        if (!schedule) {
            return std::nullopt;
        }
        if (tried && !holds(*schedule)) {
            break;  // stricter cannot be had
        }
        tried = Tried{*schedule, simulate(ensemble, *schedule)};
        if (!holds(*schedule) || (holds_in(ensemble, tried->results) && reaches_mark_in(ensemble, tried->results))) {
            break;
        }
    }
    return tried ? std::optional(without_empty_acts(ensemble, *std::move(tried))) : std::nullopt;
}

/// Held, but not ready in time, with top-ups that may be hotter: then sooner.
bool may_be_sooner(const Attempt& made) {
    return !made.broken.empty() && !made.tried.schedule.top_ups.empty() &&
           std::all_of(made.broken.begin(), made.broken.end(), [](const problem::Problem& one) {
               return one.code == "not-ready-in-time" || one.code == "growth-not-undone";
           });
}

/// The least burden whose food is ready in time: where the lightest schedule is too cool for that, the lowest mark that
/// is hot enough is looked for.
std::optional<Attempt> best_attempt(const Ensemble& ensemble, const std::shared_ptr<const trip::Trip>& trip,
                                    const Effort& effort) {
    Wanted wanted{std::nullopt, effort.lighter_than, effort.unwoken};
    const auto attempt = [&]() -> std::optional<Attempt> {
        auto tried = search_and_try(ensemble, effort, wanted);
        return tried ? std::optional(judged(ensemble, trip, *std::move(tried))) : std::nullopt;
    };
    auto first = attempt();
    if (!first || !may_be_sooner(*first)) {
        return first;
    }
    std::optional<Attempt> ready;
    double cool = first->plan.levels.mark.celsius();
    double hot = highest_mark(ensemble.setup(), first->plan.fill.reading).celsius() + 1.0;
    double mark = hot - 1.0;
    while (hot - cool > 1.0) {
        wanted.lowest_mark = units::celsius(mark);
        auto hotter = attempt();
        const bool good = hotter && hotter->broken.empty();
        if (!good && !ready) {
            return first;  // not even with the hottest
        }
        (good ? hot : cool) = mark;
        if (good) {
            ready = std::move(hotter);
        }
        mark = std::floor((hot + cool) / 2.0);
    }
    return ready ? std::move(ready) : std::move(first);
}

}  // namespace

problem::Result<Plan> plan_as_given(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    const auto setup = set_up(*trip);
    if (!setup) {
        return setup.problems();
    }
    const Ensemble ensemble(*setup, effort.promise);
    auto made = best_attempt(ensemble, trip, effort);
    if (!made) {
        return fill_impossible(*setup, effort.diagnose);
    }
    return completed(ensemble, *std::move(made), effort);
}

}  // namespace holdwater::plan
