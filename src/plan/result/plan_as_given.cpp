// SPDX-License-Identifier: MIT
#include "facts/facts.hpp"
#include "plan/advice/limits.hpp"
#include "plan/result/attempt.hpp"
#include "plan/result/progress.hpp"
#include "plan/search/schedule_search.hpp"
#include "plan/search/work.hpp"

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
constexpr double clearly = 1.6;   // times as many broken scenarios of a draft as may be: no more of them will hold

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
        // What holds for those who ask only whether it does must hold here too, however long the lightest was sought.
        const WorkBound own(facts::facts().value("search.most-of-a-try"));
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

    /// Of the scenarios, in how many a bath met its level, a core came out too hot or a food is late.
    double share_broken(const Attempt& made) const {
        return share_that(made, [&](const ScenarioResult& one) {
            return one.failed || one.excess > units::TemperatureDifference{0} || is_late(one, made);
        });
    }

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

    template <class Condition>
    static double share_that(const Attempt& made, const Condition& is_so) {
        const std::vector<ScenarioResult>& all = made.tried.results;
        return static_cast<double>(std::count_if(all.begin(), all.end(), is_so)) / static_cast<double>(all.size());
    }
    /// A food is not ready when it is to leave.
    bool is_late(const ScenarioResult& one, const Attempt& made) const {
        const units::LocalTime from = trip_->from;
        for (std::size_t i = 0; i < one.foods.size(); ++i) {
            const auto& ready = one.foods[i].ready;
            if (!ready || from.after(*ready) > made.plan.foods[i].leaves()) {
                return true;
            }
        }
        return false;
    }
    double share_late(const Attempt& made) const {
        return share_that(made, [&](const ScenarioResult& one) { return is_late(one, made); });
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
        for (std::size_t strict = 0; strict < Searches::strictness.size() && (!last || !work_is_enough()); ++strict) {
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
        for (; hot > cool && late < most_late && !work_is_enough(); hot -= 1.0) {
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
        while (hot - cool > 1.0 && !work_is_enough()) {
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
