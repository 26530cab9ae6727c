// SPDX-License-Identifier: MIT
#include "safety/clocks.hpp"

#include <algorithm>

namespace holdwater::safety {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// First moment at or after `from` at which the value is below the level; nothing if never.
std::optional<Duration> first_below(const History& history, Temperature level, Duration from) {
    if (history.empty()) {
        return std::nullopt;
    }
    if (history.at(from) < level) {
        return from;
    }
    for (std::size_t i = 1; i < history.points.size(); ++i) {
        const History::Point& a = history.points[i - 1];
        const History::Point& b = history.points[i];
        if (b.at < from || b.value >= level) {
            continue;
        }
        // Falls below within this segment, at the crossing or, at a jump, at once.
        const double drop = (a.value - b.value).si();
        const double share = drop > 0.0 ? std::clamp((a.value - level).si() / drop, 0.0, 1.0) : 0.0;
        return std::max(from, a.at + (b.at - a.at) * share);
    }
    return std::nullopt;
}

History part(const History& whole, Duration from, Duration to) {
    History cut;
    cut.add(from, whole.at(from));
    for (const History::Point& point : whole.points) {
        if (point.at > from && point.at <= to) {
            cut.points.push_back(point);
        }
    }
    if (cut.points.back().at < to) {
        cut.add(to, whole.at(to));
    }
    return cut;
}

Duration end_of(const History& history) {
    return history.empty() ? Duration{0} : history.points.back().at;
}

/// First moment from which on both are at or above the floor; nothing if that never comes.
std::optional<Duration> both_back(const History& bath, const History& core, Temperature floor, Duration from) {
    Duration moment = from;
    // Each pass moves on to a later crossing, of which there are no more than points.
    for (std::size_t i = 0; i <= bath.points.size() + core.points.size(); ++i) {
        const std::optional<Duration> core_back = core.first_at_or_above(floor, moment);
        if (!core_back) {
            return std::nullopt;
        }
        const std::optional<Duration> bath_back = bath.first_at_or_above(floor, *core_back);
        if (!bath_back) {
            return std::nullopt;
        }
        moment = *bath_back;
        if (core.at(moment) >= floor) {
            return moment;
        }
    }
    return std::nullopt;
}

}  // namespace

FallAction judge_fall(const Fall& fall, facts::Ruleset ruleset) {
    const facts::Facts& facts = facts::facts();
    if (!(fall.below_floor > Duration{0}) && !(fall.below_50 > Duration{0})) {
        return FallAction::none;
    }
    const bool grown = !(fall.growth < facts.value("fall.growth"));
    const bool deep = fall.below_50 > facts.duration("fall.deep-for");
    if (grown || deep || fall.below_floor > facts.duration("fall.eat-now")) {
        return FallAction::throw_away;
    }
    if (ruleset == facts::Ruleset::uk && (fall.times > 1 || fall.below_floor >= facts.duration("fall.uk"))) {
        return FallAction::throw_away;
    }
    return fall.below_floor <= facts.duration("fall.eat-next") ? FallAction::finish_and_eat_next
                                                               : FallAction::finish_and_eat_now;
}

Fall measure_fall(const History& bath, const History& core, Temperature floor, Duration from,
                  const facts::GrowthModel& model) {
    Fall fall;
    fall.times = 0;
    const Duration end = std::max(end_of(bath), end_of(core));
    std::optional<Duration> first;
    std::optional<Duration> begin = first_below(bath, floor, from);
    while (begin && *begin <= end) {
        first = first.value_or(*begin);
        const Duration back = std::min(both_back(bath, core, floor, *begin).value_or(end), end);
        if (back > *begin || fall.times == 0) {
            ++fall.times;
        }
        fall.below_floor += back - *begin;
        if (back >= end) {
            break;
        }
        begin = first_below(bath, floor, back);
    }
    if (first) {
        fall.below_50 = bath.time_below(facts::facts().temperature("fall.deep"), *first, end);
        const double along_core = growth_with_lag(model, part(core, *first, end), model.q0_cautious);
        const double along_bath = growth_with_lag(model, part(bath, *first, end), model.q0_cautious);
        fall.growth = std::max(along_core, along_bath);
    }
    return fall;
}

}  // namespace holdwater::safety
