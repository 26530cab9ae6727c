// SPDX-License-Identifier: MIT
// What is tried of one trip in some scenarios, and what became of it. Inside plan/result only.
#pragma once

#include "plan/result/attempt.hpp"
#include "plan/result/effort.hpp"
#include "plan/search/schedule_search.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <map>
#include <memory>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

namespace holdwater::plan {

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

Outcome outcome_of(const Attempt& made);

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
    const Attempt* best();

    /// Of the hottest top-ups that hold; where that is too cool, the first as soon as the pots boil.
    const Attempt* any();

    /// The one that asks least of the cook.
    const Attempt* lightest_good();

    /// False if food is late even with the hottest top-ups, the first as soon as the pots boil, and never mind whether
    /// that can be held: in far more scenarios than may be. No cooler mark, and no later fire, is sooner by so much.
    bool may_be_ready();

    /// What that came to in other scenarios is tried in these.
    const Attempt* as_in(const Attempt& other) { return attempt_of(other.tried.schedule); }

    /// Of the scenarios, in how many a bath met its level, a core came out too hot or a food is late.
    double share_broken(const Attempt& made) const;

  private:
    /// What a schedule is known by: the rest of it follows from this.
    using Key = std::tuple<double, double, std::vector<double>>;

    static Key key_of(const Schedule& schedule);

    const Tried& tried(const Schedule& schedule);

    template <class Condition>
    static double share_that(const Attempt& made, const Condition& is_so) {
        const std::vector<ScenarioResult>& all = made.tried.results;
        return static_cast<double>(std::count_if(all.begin(), all.end(), is_so)) / static_cast<double>(all.size());
    }
    /// A food is not ready when it is to leave.
    bool is_late(const ScenarioResult& one, const Attempt& made) const;
    double share_late(const Attempt& made) const;

    const Attempt* attempt_of(const Schedule& schedule);

    /// Searches with few scenarios and tries the find in many. If it holds in the few only, the search is repeated more
    /// strictly, since what lies at the edge in the few may lie beyond it in the many. The last try is what is judged.
    const Attempt* search_and_try(const Wanted& wanted);

    Wanted asked() const;

    const Attempt* with(std::optional<double> lowest_mark, bool soon = false);
    static bool asks_for_hotter(Outcome outcome) { return outcome == Outcome::unsure || outcome == Outcome::late; }

    /// Of what is tried where all else is late, nothing whose mark the pots do not give.
    static void take_in_reach(BestOf& best, const Attempt* other);

    /// The hottest fill, and then the lowest mark that is hot enough.
    void try_hotter(BestOf& best, double coolest);

    /// The hottest mark over another with which all is well; else the best that can be had: one that the pots do not
    /// give, or the hottest with which food is in time at all. The hottest that holds is mostly ready the soonest, but
    /// a little cooler may ask for one top-up more, and so keep the bath the warmer: a few are tried.
    const Attempt* hottest_good(double cool, units::Temperature hottest, bool soon);

    /// The lowest mark between two with which all is well; else as hottest_good.
    const Attempt* lowest_good(double cool, units::Temperature hottest, bool soon);

    const Ensemble* ensemble_;
    Searches* searches_;
    std::shared_ptr<const trip::Trip> trip_;
    const Effort* effort_;
    std::map<Key, Tried> tried_;
    std::map<Key, Attempt> judged_;
};

}  // namespace holdwater::plan
