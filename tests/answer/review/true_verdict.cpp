// SPDX-License-Identifier: MIT
#include "answer/review/true_verdict.hpp"

#include "answer/review/review_clock.hpp"
#include "answer/review/review_verdict.hpp"
#include "facts/facts.hpp"
#include "safety/after_fall.hpp"
#include "safety/growth.hpp"

#include <algorithm>

namespace holdwater::support {

using units::Duration;

Truth truth_of(const trip::Trip& trip, const safety::Standard& standard, const heat::Bath& bath) {
    Truth truth;
    answer::Course course;
    course.in = Duration{0};
    course.out = bath.now();
    course.bath = bath.bath_history();
    course.core = course.core_fast = bath.core_history(0);
    // Nothing is known of the layer that an unstirred box hides but its spread: the bath itself counts.
    course.seen = course.bath;
    course.cook_floor = standard.cook_floor;
    course.hold_floor = standard.hold_floor;
    const answer::Done done = answer::done_along(course.core, standard);
    course.done = done.safe;
    safety::Fall fall = answer::clocks_of(course).fall;
    const facts::FoodKind* kind = facts::facts().find_food(trip.foods.front().kind);
    const facts::GrowthModel& model = facts::facts().growth(kind->growth);
    fall.growth =
        std::max(0.0, safety::lagged_growth(answer::likely_growth_exponent(course, model), model.q0_cautious));
    truth.below_h = units::in_hours(fall.below_floor);
    truth.growth = fall.growth;
    const double floor = std::max(standard.cook_floor, standard.hold_floor).celsius();
    truth.spare = course.bath.lowest(course.in, course.out).celsius() - floor;
    const auto take = [&](answer::Verdict v) { truth.verdict = std::max(truth.verdict, v); };
    switch (safety::decide(fall, safety::fall_rules(trip.rules, trip.at_risk)).action) {
        case safety::FallAction::none:
            break;
        case safety::FallAction::finish_and_eat_next:
            take(answer::Verdict::finish_and_eat_next);
            break;
        case safety::FallAction::finish_and_eat_now:
            take(answer::Verdict::finish_and_eat_now);
            break;
        case safety::FallAction::throw_away:
            take(answer::Verdict::throw_away);
            break;
    }
    if (answer::judge_rise(course.core, done.come_up) == safety::ComeUpVerdict::refused) {
        take(answer::Verdict::throw_away);
    }
    if (standard.finish) {
        take(answer::Verdict::finish_and_eat_next);
    }
    if (!done.safe) {
        take(answer::Verdict::not_done);
    }
    return truth;
}

}  // namespace holdwater::support
