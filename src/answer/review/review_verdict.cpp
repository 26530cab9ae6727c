// SPDX-License-Identifier: MIT
#include "answer/review/review_verdict.hpp"

#include "facts/facts.hpp"
#include "heat/driven.hpp"
#include "safety/kill.hpp"
#include "safety/net_growth.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// The first moment until which the core has been at or above a level for a time on end.
std::optional<Duration> stayed(const History& core, Temperature level, Duration how_long) {
    std::optional<Duration> since;
    for (std::size_t i = 0; i < core.points.size(); ++i) {
        const History::Point& b = core.points[i];
        if (b.value < level) {
            // Where the core leaves the level within this stretch, the time up to there counts as well.
            if (since && i > 0) {
                const History::Point& a = core.points[i - 1];
                const Duration left = a.at + (b.at - a.at) * ((a.value - level) / (a.value - b.value));
                if (left - *since >= how_long) {
                    return *since + how_long;
                }
            }
            since.reset();
            continue;
        }
        if (!since) {
            since = i > 0 ? core.first_at_or_above(level, core.points[i - 1].at) : b.at;
        }
        if (b.at - *since >= how_long) {
            return *since + how_long;
        }
    }
    return std::nullopt;
}

Verdict of(safety::FallAction action) {
    switch (action) {
        case safety::FallAction::none:
            return Verdict::eat;
        case safety::FallAction::finish_and_eat_next:
            return Verdict::finish_and_eat_next;
        case safety::FallAction::finish_and_eat_now:
            return Verdict::finish_and_eat_now;
        case safety::FallAction::throw_away:
            return Verdict::throw_away;
    }
    return Verdict::throw_away;
}

}  // namespace

Done done_along(const History& core, const safety::Standard& standard) {
    Done done;
    done.come_up = safety::come_up(core);
    const auto met = safety::moment_met(*standard.kill, core, safety::adaptation_factor(done.come_up));
    const auto warm = stayed(core, standard.core_at_least, standard.core_at_least_for);
    if (met && warm) {
        done.safe = std::max(*met, *warm);
        done.ready = safety::ready_after(standard, core, *done.safe).undone;
    }
    return done;
}

bool stays_warm(const History& core, Temperature level, Duration how_long) {
    return stayed(core, level, how_long).has_value();
}

safety::ComeUpVerdict judge_rise(const History& core, std::optional<Duration> come_up) {
    if (come_up) {
        return safety::judge_come_up(come_up);
    }
    const auto from = core.first_at_or_above(facts::facts().temperature("come-up.from"), core.points.front().at);
    return from ? safety::judge_come_up(core.points.back().at - *from) : safety::ComeUpVerdict::fine;
}

Missing missing_time(const heat::Modes& slow, Temperature start, const Course& course, const History& seen,
                     const safety::Standard& standard) {
    const History::Point last = seen.points.back();
    Missing missing;
    missing.credited =
        safety::hold_time(*standard.kill, last.value).has_value() && last.value >= standard.core_at_least;
    if (!missing.credited) {
        return missing;
    }
    History core = heat::driven(slow, start, seen, course.in, last.at).core;
    // What the core column took off stays off.
    const units::TemperatureDifference off = course.core.points.back().value - core.at(course.out);
    for (History::Point& point : core.points) {
        point.value = point.at <= course.out ? course.core.at(point.at) : point.value + off;
    }
    const Done done = done_along(core, standard);
    if (done.ready) {
        missing.time = *done.ready - course.out;
    } else {
        missing.credited = false;
    }
    return missing;
}

void judge(FoodReview& food, const trip::Trip& trip) {
    const facts::Facts& facts = facts::facts();
    const facts::FoodKind& kind = *facts.find_food(food.food->kind);
    food.reason.rule = fmt::format("{}/{}", facts::to_name(trip.rules), facts::to_text(kind.category));
    std::replace(food.reason.rule.begin(), food.reason.rule.end(), ' ', '-');
    food.verdict = Verdict::eat;
    food.reason.figure = food.standard.kill->key;
    food.reason.source = food.standard.rule_source;

    const auto take = [&](Verdict verdict, const std::string& figure, const std::string& source) {
        if (verdict > food.verdict) {
            food.verdict = verdict;
            food.reason.figure = figure;
            food.reason.source = source;
        }
    };
    // The heaviest reason is given; of two that weigh the same, the first.
    const safety::Decision fall = safety::decide(food.fall, safety::fall_rules(trip.rules, trip.at_risk));
    if (fall.action != safety::FallAction::none) {
        take(of(fall.action), fall.figure, facts.figure(fall.figure).source);
    }
    if (food.come_up_verdict == safety::ComeUpVerdict::refused) {
        take(Verdict::throw_away, "come-up.refuse", facts.figure("come-up.refuse").source);
    }
    if (food.standard.finish) {
        take(Verdict::finish_and_eat_next, "finish", food.standard.finish->source);
    }
    if (!food.stay_known) {
        take(Verdict::not_done, "review.notes", "");
    }
    if (!food.ready_late && food.waits_for_growth) {
        take(Verdict::not_done, "perfringens.d.cautious", facts.figure("perfringens.d.cautious").source);
    } else if (!food.ready_late) {
        take(Verdict::not_done, food.standard.kill->key, food.standard.kill->source);
    }
}

}  // namespace holdwater::answer
