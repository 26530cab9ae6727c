// SPDX-License-Identifier: MIT
#include "plan/result/trying.hpp"

#include "facts/facts.hpp"
#include "plan/search/work.hpp"

#include <cmath>

namespace holdwater::plan {
namespace {

constexpr double far_more = 4.0;  // times as many late scenarios as may be: not worth to look on

}  // namespace

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

const Attempt* Trying::best() {
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

const Attempt* Trying::any() {
    Wanted wanted = asked();
    wanted.any = true;
    const Attempt* const first = search_and_try(wanted);
    if (first == nullptr || !asks_for_hotter(outcome_of(*first))) {
        return first;
    }
    BestOf best(first);
    const double coolest = ensemble_->setup().levels.action_line.celsius();
    if (asks_for_hotter(best.outcome()) && may_be_ready()) {
        best.take(hottest_good(coolest, highest_mark(ensemble_->setup(), searches_->hottest_fill()->reading), true));
    }
    return best.attempt();
}

const Attempt* Trying::lightest_good() {
    const Attempt* const first = with(std::nullopt);
    if (first == nullptr || !asks_for_hotter(outcome_of(*first))) {
        return first;
    }
    BestOf best(first);
    const double coolest = ensemble_->setup().levels.action_line.celsius();
    try_hotter(best, coolest);
    return best.attempt();
}

bool Trying::may_be_ready() {
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

double Trying::share_broken(const Attempt& made) const {
    return share_that(made, [&](const ScenarioResult& one) {
        return one.failed || one.excess > units::TemperatureDifference{0} || is_late(one, made);
    });
}

Trying::Key Trying::key_of(const Schedule& schedule) {
    std::vector<double> moments;
    for (const ScheduledTopUp& top_up : schedule.top_ups) {
        moments.push_back(top_up.at.si());
    }
    return {schedule.recipe.reading.celsius(), schedule.recipe.top_up_mark.celsius(), std::move(moments)};
}

const Tried& Trying::tried(const Schedule& schedule) {
    const Key key = key_of(schedule);
    const auto known = tried_.find(key);
    return known != tried_.end() ? known->second
                                 : tried_.emplace(key, Tried{schedule, simulate(*ensemble_, schedule)}).first->second;
}

bool Trying::is_late(const ScenarioResult& one, const Attempt& made) const {
    const units::LocalTime from = trip_->from;
    for (std::size_t i = 0; i < one.foods.size(); ++i) {
        const auto& ready = one.foods[i].ready;
        if (!ready || from.after(*ready) > made.plan.foods[i].leaves()) {
            return true;
        }
    }
    return false;
}

double Trying::share_late(const Attempt& made) const {
    return share_that(made, [&](const ScenarioResult& one) { return is_late(one, made); });
}

const Attempt* Trying::attempt_of(const Schedule& schedule) {
    const Key key = key_of(schedule);
    const auto known = judged_.find(key);
    return known != judged_.end()
               ? &known->second
               : &judged_.emplace(key, judged(*ensemble_, trip_, without_empty_acts(*ensemble_, tried(schedule))))
                      .first->second;
}

const Attempt* Trying::search_and_try(const Wanted& wanted) {
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

Wanted Trying::asked() const {
    Wanted wanted;
    wanted.lighter_than = effort_->lighter_than;
    wanted.unwoken = effort_->unwoken;
    return wanted;
}

const Attempt* Trying::with(std::optional<double> lowest_mark, bool soon) {
    Wanted wanted = asked();
    wanted.soon = soon;
    wanted.lowest_mark = lowest_mark ? std::optional(units::celsius(*lowest_mark)) : std::nullopt;
    return search_and_try(wanted);
}

void Trying::take_in_reach(BestOf& best, const Attempt* other) {
    if (other != nullptr && outcome_of(*other) != Outcome::out_of_reach) {
        best.take(other);
    }
}

void Trying::try_hotter(BestOf& best, double coolest) {
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

const Attempt* Trying::hottest_good(double cool, units::Temperature hottest, bool soon) {
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

const Attempt* Trying::lowest_good(double cool, units::Temperature hottest, bool soon) {
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

}  // namespace holdwater::plan
