// SPDX-License-Identifier: MIT
#include "plan/advice/limits.hpp"
#include "plan/result/attempt.hpp"
#include "plan/result/progress.hpp"
#include "plan/search/schedule_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>
#include <utility>

namespace holdwater::plan {
namespace {

constexpr double far_more = 4.0;  // times as many late scenarios as may be: not worth to look on
constexpr Draw draft{512, 1};     // in which marks are compared: no figure of any science

/// Searches in few scenarios, more and more strictly, shared by all that is tried of one trip.
class Searches {
  public:
    static constexpr std::array strictness{1.0, 0.8, 0.5, 0.2};

    Searches(const Setup& setup, Draw draw) : setup_(&setup), draw_(draw) {}

    std::optional<Schedule> best(std::size_t strict, const Wanted& wanted) { return at(strict).best(wanted); }
    const std::optional<Recipe>& hottest_fill() { return at(0).hottest(); }

  private:
    ScheduleSearch& at(std::size_t strict) {
        auto& search = by_strictness_[strict];
        if (!search) {
            search.emplace(Ensemble(*setup_, draw_, allowed_failures() * strictness[strict]));
        }
        return *search;
    }

    const Setup* setup_;
    Draw draw_;
    std::array<std::optional<ScheduleSearch>, strictness.size()> by_strictness_;
};

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
    explicit BestOf(const Attempt* first) : best_(first) {}

    void take(const Attempt* other) {
        if (other != nullptr && outcome_of(*other) < outcome()) {
            best_ = other;
        }
    }
    Outcome outcome() const { return outcome_of(*best_); }
    const Attempt* attempt() const { return best_; }

  private:
    const Attempt* best_;
};

/// Looks for the schedule of the least burden whose food is ready in time.
class Trying {
  public:
    Trying(const Ensemble& ensemble, Searches& searches, const std::shared_ptr<const trip::Trip>& trip,
           const Effort& effort)
        : ensemble_(&ensemble), searches_(&searches), trip_(trip), effort_(&effort) {}

    /// Where the lightest schedule is too cool for it, the fill is the hottest, and then the lowest mark that is hot
    /// enough is looked for: of its top-ups, or of one that follows the fill as soon as the pots boil.
    const Attempt* best() {
        if (effort_->whether) {
            const Attempt* const one = any();
            if (one == nullptr || outcome_of(*one) != Outcome::out_of_reach) {
                return one;
            }
        }
        const Attempt* const lightest = lightest_good();
        if (lightest == nullptr || outcome_of(*lightest) < Outcome::late) {
            return lightest;
        }
        // What holds for those who ask only whether it does must hold here too.
        BestOf best(lightest);
        take_in_reach(best, any());
        return best.attempt();
    }

    /// Of the hottest top-ups that hold; where that is too cool, the first as soon as the pots boil.
    const Attempt* any() {
        Wanted wanted = asked();
        wanted.any = true;
        const Attempt* const first = search_and_try(wanted);
        if (first == nullptr || !asks_for_hotter(outcome_of(*first))) {
            return first;
        }
        BestOf best(first);
        const double coolest = ensemble_->setup().levels.action_line.celsius();
        if (asks_for_hotter(best.outcome()) && may_be_ready()) {
            best.take(
                hottest_good(coolest, highest_mark(ensemble_->setup(), searches_->hottest_fill()->reading), true));
        }
        return best.attempt();
    }

    /// The one that asks least of the cook.
    const Attempt* lightest_good() {
        const Attempt* const first = with(std::nullopt);
        if (first == nullptr || !asks_for_hotter(outcome_of(*first))) {
            return first;
        }
        BestOf best(first);
        const double coolest = ensemble_->setup().levels.action_line.celsius();
        try_hotter(best, coolest);
        return best.attempt();
    }

    /// False if food is late even with the hottest top-ups, the first as soon as the pots boil, and never mind whether
    /// that can be held: in far more scenarios than may be. No cooler mark, and no later fire, is sooner by so much.
    bool may_be_ready() {
        const std::optional<Recipe>& fill = searches_->hottest_fill();
        if (!fill) {
            return true;  // that is for others to say
        }
        Wanted hottest;
        hottest.lowest_mark = highest_mark(ensemble_->setup(), fill->reading);
        hottest.soon = true;
        const auto schedule = searches_->best(0, hottest);
        return !schedule || share_late(*attempt_of(*schedule)) < far_more * allowed_failures();
    }

    /// What that came to in other scenarios is tried in these.
    const Attempt* as_in(const Attempt& other) { return attempt_of(other.tried.schedule); }

  private:
    /// What a schedule is known by: the rest of it follows from this.
    using Key = std::tuple<double, double, std::vector<double>>;

    static Key key_of(const Schedule& schedule) {
        std::vector<double> moments;
        for (const ScheduledTopUp& top_up : schedule.top_ups) {
            moments.push_back(top_up.at.si());
        }
        return {schedule.recipe.reading.celsius(), schedule.recipe.top_up_mark.celsius(), std::move(moments)};
    }

    const Tried& tried(const Schedule& schedule) {
        const Key key = key_of(schedule);
        const auto known = tried_.find(key);
        return known != tried_.end()
                   ? known->second
                   : tried_.emplace(key, Tried{schedule, simulate(*ensemble_, schedule)}).first->second;
    }

    /// Of the scenarios, in how many a food is not ready when it is to leave.
    double share_late(const Attempt& made) const {
        const units::LocalTime from = trip_->from;
        const auto late = [&](const ScenarioResult& one) {
            for (std::size_t i = 0; i < one.foods.size(); ++i) {
                const auto& ready = one.foods[i].ready;
                if (!ready || from.after(*ready) > made.plan.foods[i].leaves()) {
                    return true;
                }
            }
            return false;
        };
        const auto count = std::count_if(made.tried.results.begin(), made.tried.results.end(), late);
        return static_cast<double>(count) / static_cast<double>(made.tried.results.size());
    }

    const Attempt* attempt_of(const Schedule& schedule) {
        const Key key = key_of(schedule);
        const auto known = judged_.find(key);
        return known != judged_.end()
                   ? &known->second
                   : &judged_.emplace(key, judged(*ensemble_, trip_, without_empty_acts(*ensemble_, tried(schedule))))
                          .first->second;
    }

    /// Searches with few scenarios and tries the find in many. If it holds in the few only, the search is repeated more
    /// strictly, since what lies at the edge in the few may lie beyond it in the many. The last try is what is judged.
    const Attempt* search_and_try(const Wanted& wanted) {
        std::optional<Schedule> last;
        for (std::size_t strict = 0; strict < Searches::strictness.size(); ++strict) {
            auto schedule = searches_->best(strict, wanted);
            if (!schedule) {
                return nullptr;
            }
            if (last && !holds(*schedule)) {
                break;  // stricter cannot be had
            }
            if (wanted.lowest_mark && !holds(*schedule)) {
                return nullptr;  // it is asked for something that holds, not for why nothing does
            }
            last = std::move(schedule);
            if (!holds(*last)) {
                break;
            }
            const std::vector<ScenarioResult>& results = tried(*last).results;
            if (holds_in(*ensemble_, results) && reaches_mark_in(*ensemble_, results)) {
                break;
            }
        }
        return attempt_of(*last);
    }

    Wanted asked() const {
        Wanted wanted;
        wanted.lighter_than = effort_->lighter_than;
        wanted.unwoken = effort_->unwoken;
        return wanted;
    }

    const Attempt* with(std::optional<double> lowest_mark, bool soon = false) {
        Wanted wanted = asked();
        wanted.soon = soon;
        wanted.lowest_mark = lowest_mark ? std::optional(units::celsius(*lowest_mark)) : std::nullopt;
        return search_and_try(wanted);
    }
    static bool asks_for_hotter(Outcome outcome) { return outcome == Outcome::unsure || outcome == Outcome::late; }

    /// Of what is tried where all else is late, nothing whose mark the pots do not give.
    static void take_in_reach(BestOf& best, const Attempt* other) {
        if (other != nullptr && outcome_of(*other) != Outcome::out_of_reach) {
            best.take(other);
        }
    }

    /// The hottest fill, and then the lowest mark that is hot enough.
    void try_hotter(BestOf& best, double coolest) {
        const Attempt* const hottest_fill = with(coolest);
        best.take(hottest_fill);
        if (hottest_fill == nullptr || !asks_for_hotter(outcome_of(*hottest_fill)) || !may_be_ready()) {
            return;
        }
        const units::Temperature hot = highest_mark(ensemble_->setup(), hottest_fill->plan.fill.reading);
        if (!hottest_fill->tried.schedule.top_ups.empty()) {
            best.take(lowest_good(hottest_fill->plan.levels.mark.celsius(), hot, false));
        }
        if (asks_for_hotter(best.outcome())) {
            best.take(lowest_good(coolest, hot, true));
        }
    }

    /// The hottest mark over another with which all is well; else the best that can be had: one that the pots do not
    /// give, or the hottest with which food is in time at all. The hottest that holds is mostly ready the soonest, but
    /// a little cooler may ask for one top-up more, and so keep the bath the warmer: a few are tried.
    const Attempt* hottest_good(double cool, units::Temperature hottest, bool soon) {
        double hot = hottest.celsius();
        constexpr int most_late = 3;
        const Attempt* ready = nullptr;
        int late = 0;
        for (; hot > cool && late < most_late; hot -= 1.0) {
            const Attempt* const hotter = with(hot, soon);
            if (hotter == nullptr) {
                continue;
            }
            const Outcome outcome = outcome_of(*hotter);
            late += asks_for_hotter(outcome) ? 1 : 0;
            const Outcome before = ready != nullptr ? outcome_of(*ready) : Outcome::late;
            // Of two that are out of reach the lower one is less so.
            if (outcome < before || (outcome == Outcome::out_of_reach && outcome == before)) {
                ready = hotter;
            }
            if (outcome == Outcome::good) {
                break;
            }
        }
        return ready;
    }

    /// The lowest mark between two with which all is well; else as hottest_good.
    const Attempt* lowest_good(double cool, units::Temperature hottest, bool soon) {
        const Attempt* ready = hottest_good(cool, hottest, soon);
        if (ready == nullptr || outcome_of(*ready) != Outcome::good) {
            return ready;
        }
        double hot = ready->plan.levels.mark.celsius();
        while (hot - cool > 1.0) {
            const double mark = std::floor((hot + cool) / 2.0);
            const Attempt* const cooler = with(mark, soon);
            const bool good = cooler != nullptr && outcome_of(*cooler) == Outcome::good;
            (good ? hot : cool) = mark;
            if (good) {
                ready = cooler;
            }
        }
        return ready;
    }

    const Ensemble* ensemble_;
    Searches* searches_;
    std::shared_ptr<const trip::Trip> trip_;
    const Effort* effort_;
    std::map<Key, Tried> tried_;
    std::map<Key, Attempt> judged_;
};

}  // namespace

problem::Result<Plan> plan_as_given(std::shared_ptr<const trip::Trip> trip, const Effort& effort) {
    count_trip();
    const auto setup = set_up(*trip);
    if (!setup) {
        return setup.problems();
    }
    Searches searches(*setup, effort.search);
    const Ensemble ensemble(*setup, effort.promise);
    Trying trying(ensemble, searches, trip, effort);
    const Attempt* made = nullptr;
    if (ensemble.size() > 2 * draft.points) {
        // What to try is found in a part of the scenarios; what is promised is what holds in all of them.
        const Ensemble some(*setup, draft);
        Trying looking(some, searches, trip, effort);
        const Attempt* const found = looking.best();
        if (effort.whether && found != nullptr && outcome_of(*found) >= Outcome::late) {
            return completed(some, *found, effort);
        }
        made = found != nullptr ? trying.as_in(*found) : nullptr;
        if (found != nullptr && outcome_of(*found) < outcome_of(*made)) {
            made = trying.best();  // at the edge
        }
    } else {
        made = trying.best();
    }
    if (made == nullptr) {
        return fill_impossible(*setup, effort.diagnose);
    }
    return completed(ensemble, *made, effort);
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
