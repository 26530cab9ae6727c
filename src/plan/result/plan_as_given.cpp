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

/// What became of a try, the best first.
enum class Outcome {
    good,
    out_of_reach,  // all well, but the pots do not give the mark: a lower one may be enough
    unsure,        // ready in time only if the bath reads more than it does in 95 of 100 scenarios
    late,          // held, but not ready in time: a hotter bath may be sooner
    broken,
};

Outcome outcome_of(const Attempt& made) {
    if (made.broken.empty()) {
        const bool sure = std::all_of(made.plan.foods.begin(), made.plan.foods.end(),
                                      [](const FoodPlan& food) { return food.ready_if <= food.coolest.low; });
        if (!sure) {
            return Outcome::unsure;
        }
        return made.plan.mark_out_of_reach ? Outcome::out_of_reach : Outcome::good;
    }
    const bool late = std::all_of(made.broken.begin(), made.broken.end(), [](const problem::Problem& one) {
        return one.code == "not-ready-in-time" || one.code == "growth-not-undone";
    });
    return late ? Outcome::late : Outcome::broken;
}

/// Keeps the first of the better ones.
class BestOf {
  public:
    explicit BestOf(Attempt first) : outcome_(outcome_of(first)), best_(std::move(first)) {}

    void take(std::optional<Attempt> other) {
        if (other && outcome_of(*other) < outcome_) {
            outcome_ = outcome_of(*other);
            best_ = *std::move(other);
        }
    }
    Outcome outcome() const { return outcome_; }
    Attempt attempt() && { return std::move(best_); }

  private:
    Outcome outcome_;
    Attempt best_;
};

/// Looks for the schedule of the least burden whose food is ready in time.
class Trying {
  public:
    Trying(const Ensemble& ensemble, const std::shared_ptr<const trip::Trip>& trip, const Effort& effort)
        : ensemble_(&ensemble), trip_(trip), effort_(&effort) {}

    /// Where the lightest schedule is too cool for it, the fill is the hottest, and then the lowest mark that is hot
    /// enough is looked for: of its top-ups, or of one that follows the fill as soon as the pots boil.
    std::optional<Attempt> best() const {
        auto first = with(std::nullopt);
        if (!first || !asks_for_hotter(outcome_of(*first))) {
            return first;
        }
        BestOf best(*std::move(first));
        const double coolest = ensemble_->setup().levels.action_line.celsius();
        const auto hottest_fill = with(coolest);
        best.take(hottest_fill);
        if (!hottest_fill || !asks_for_hotter(outcome_of(*hottest_fill))) {
            return std::move(best).attempt();
        }
        const double hot = highest_mark(ensemble_->setup(), hottest_fill->plan.fill.reading).celsius();
        if (!hottest_fill->tried.schedule.top_ups.empty()) {
            best.take(lowest_good(hottest_fill->plan.levels.mark.celsius(), hot, false));
        }
        if (asks_for_hotter(best.outcome())) {
            best.take(lowest_good(coolest, hot, true));
        }
        return std::move(best).attempt();
    }

  private:
    std::optional<Attempt> with(std::optional<double> lowest_mark, bool soon = false) const {
        Wanted wanted{std::nullopt, effort_->lighter_than, effort_->unwoken, soon};
        wanted.lowest_mark = lowest_mark ? std::optional(units::celsius(*lowest_mark)) : std::nullopt;
        auto tried = search_and_try(*ensemble_, *effort_, wanted);
        return tried ? std::optional(judged(*ensemble_, trip_, *std::move(tried))) : std::nullopt;
    }
    static bool asks_for_hotter(Outcome outcome) { return outcome == Outcome::unsure || outcome == Outcome::late; }

    /// The lowest mark between two with which all is well; else the best that can be had: one that the pots do not
    /// give, or the hottest with which food is in time at all. The hottest that holds is mostly ready the soonest, but
    /// a little cooler may ask for one top-up more, and so keep the bath the warmer: a few are tried.
    std::optional<Attempt> lowest_good(double cool, double hot, bool soon) const {
        constexpr int most_late = 3;
        std::optional<Attempt> ready;
        int late = 0;
        for (; hot > cool && late < most_late; hot -= 1.0) {
            auto hotter = with(hot, soon);
            if (!hotter) {
                continue;
            }
            const Outcome outcome = outcome_of(*hotter);
            late += asks_for_hotter(outcome) ? 1 : 0;
            const Outcome before = ready ? outcome_of(*ready) : Outcome::late;
            // Of two that are out of reach the lower one is less so.
            if (outcome < before || (outcome == Outcome::out_of_reach && outcome == before)) {
                ready = std::move(hotter);
            }
            if (outcome == Outcome::good) {
                break;
            }
        }
        if (!ready || outcome_of(*ready) != Outcome::good) {
            return ready;
        }
        while (hot - cool > 1.0) {
            const double mark = std::floor((hot + cool) / 2.0);
            auto cooler = with(mark, soon);
            const bool good = cooler && outcome_of(*cooler) == Outcome::good;
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
