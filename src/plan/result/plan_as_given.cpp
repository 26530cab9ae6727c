// SPDX-License-Identifier: MIT
#include "plan/advice/limits.hpp"
#include "plan/result/attempt.hpp"
#include "plan/result/progress.hpp"
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
        if (wanted.lowest_mark && !holds(*schedule)) {
            return std::nullopt;  // it is asked for something that holds, not for why nothing does
        }
        tried = Tried{*schedule, simulate(ensemble, *schedule)};
        if (!holds(*schedule) || (holds_in(ensemble, tried->results) && reaches_mark_in(ensemble, tried->results))) {
            break;
        }
    }
    return tried ? std::optional(without_empty_acts(ensemble, *std::move(tried))) : std::nullopt;
}

/// Held, but not ready in time: a hotter bath may be sooner.
bool is_late(const Attempt& made) {
    return !made.broken.empty() && std::all_of(made.broken.begin(), made.broken.end(), [](const problem::Problem& one) {
        return one.code == "not-ready-in-time" || one.code == "growth-not-undone";
    });
}

/// Looks for the schedule of the least burden whose food is ready in time.
class Trying {
  public:
    Trying(const Ensemble& ensemble, const std::shared_ptr<const trip::Trip>& trip, const Effort& effort)
        : ensemble_(&ensemble), trip_(trip), effort_(&effort) {}

    /// Where the lightest schedule is too cool for it, the fill is the hottest, and then the lowest mark that is hot
    /// enough is looked for: of its top-ups, or of one that follows the fill as soon as the pots boil.
    std::optional<Attempt> best() const {
        auto first = with(std::nullopt);
        if (!first || !is_late(*first)) {
            return first;
        }
        const double coolest = ensemble_->setup().levels.action_line.celsius();
        auto hottest_fill = with(coolest);
        if (!hottest_fill || !is_late(*hottest_fill)) {
            return hottest_fill && hottest_fill->broken.empty() ? std::move(hottest_fill) : std::move(first);
        }
        const bool soon = hottest_fill->tried.schedule.top_ups.empty();
        const double cool = soon ? coolest : hottest_fill->plan.levels.mark.celsius();
        const double hot = highest_mark(ensemble_->setup(), hottest_fill->plan.fill.reading).celsius();
        auto ready = lowest_good(cool, hot, soon);
        return ready ? std::move(ready) : std::move(first);
    }

  private:
    std::optional<Attempt> with(std::optional<double> lowest_mark, bool soon = false) const {
        Wanted wanted{std::nullopt, effort_->lighter_than, effort_->unwoken, soon};
        wanted.lowest_mark = lowest_mark ? std::optional(units::celsius(*lowest_mark)) : std::nullopt;
        auto tried = search_and_try(*ensemble_, *effort_, wanted);
        return tried ? std::optional(judged(*ensemble_, trip_, *std::move(tried))) : std::nullopt;
    }
    /// The lowest mark between two with which all is well. The hottest that holds at all is ready the soonest: where
    /// even that is late, none.
    std::optional<Attempt> lowest_good(double cool, double hot, bool soon) const {
        std::optional<Attempt> ready;
        for (; hot > cool && !ready; hot -= 1.0) {
            auto hotter = with(hot, soon);
            if (hotter && is_late(*hotter)) {
                return std::nullopt;
            }
            if (hotter && hotter->broken.empty()) {
                ready = std::move(hotter);
            }
        }
        hot += 1.0;
        while (ready && hot - cool > 1.0) {
            const double mark = std::floor((hot + cool) / 2.0);
            auto cooler = with(mark, soon);
            const bool good = cooler && cooler->broken.empty();
            (good ? hot : cool) = mark;
            if (good) {
                ready = std::move(cooler);
            }
        }
        return ready;
    }

    const Ensemble* ensemble_;
    std::shared_ptr<const trip::Trip> trip_;
    const Effort* effort_;
};

}  // namespace

problem::Result<Plan> plan_as_given(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    count_trip();
    const auto setup = set_up(*trip);
    if (!setup) {
        return setup.problems();
    }
    const Ensemble ensemble(*setup, effort.promise);
    auto made = Trying(ensemble, trip, effort).best();
    if (!made) {
        return fill_impossible(*setup, effort.diagnose);
    }
    return completed(ensemble, *std::move(made), effort);
}

}  // namespace holdwater::plan
