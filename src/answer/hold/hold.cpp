// SPDX-License-Identifier: MIT
#include "answer/hold/hold.hpp"

#include "safety/clocks.hpp"
#include "safety/kill.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using units::Duration;

constexpr Duration horizon = units::hours(72);

/// Sampling of a smooth rise: from a second on, each interval a little longer than the last, at most five minutes.
constexpr double growth = 1.03;
constexpr double longest_interval = 300.0;

std::optional<Duration> later_of(std::optional<Duration> a, std::optional<Duration> b) {
    if (!a || !b) {
        return std::nullopt;
    }
    return std::max(*a, *b);
}

}  // namespace

problem::Result<units::History> core_in_constant_bath(const HoldQuestion& question) {
    auto modes = heat::modes_of(question.body, question.properties, question.film);
    if (!modes) {
        return modes.problems();
    }
    units::History core;
    const double excess = (question.start - question.bath).si();
    double interval = 1.0;
    for (double t = 0.0; t <= horizon.si(); t += interval) {
        const double theta = heat::core_at(*modes, Duration{t});
        core.add(Duration{t}, question.bath + units::kelvins(theta * excess));
        interval = std::min(interval * growth, longest_interval);
    }
    return core;
}

CoreMilestones judge_core(const units::History& core, const safety::Standard& standard) {
    CoreMilestones safe;
    safe.come_up = safety::come_up(core);
    const double times = safety::adaptation_factor(safe.come_up);
    safe.kill_met = safety::moment_met(*standard.kill, core, times);
    std::optional<Duration> warm = core.first_at_or_above(standard.core_at_least);
    if (warm) {
        *warm += standard.core_at_least_for;
    }
    safe.safe = later_of(safe.kill_met, warm);
    return safe;
}

problem::Result<HoldAnswer> hold(const HoldQuestion& question, const safety::Standard& standard) {
    auto core = core_in_constant_bath(question);
    if (!core) {
        return core.problems();
    }
    HoldAnswer answer;
    answer.core_at_target = core->first_at_or_above(question.target - units::kelvins(1.0));
    const CoreMilestones safe = judge_core(*core, standard);
    answer.come_up = safe.come_up;
    answer.kill_met = safe.kill_met;
    answer.safe = safe.safe;
    answer.done = later_of(safe.safe, answer.core_at_target);
    return answer;
}

std::optional<units::Length> thickest_piece(HoldQuestion question) {
    const auto passes = [&](double millimetres) {
        question.body.thickness = units::millimetres(millimetres);
        const auto core = core_in_constant_bath(question);
        return core && safety::judge_come_up(safety::come_up(*core)) != safety::ComeUpVerdict::refused;
    };
    double good = 5.0;
    double bad = 400.0;
    if (!passes(good)) {
        return std::nullopt;
    }
    while (bad - good > 0.5) {
        const double middle = (good + bad) / 2.0;
        (passes(middle) ? good : bad) = middle;
    }
    return units::millimetres(std::floor(good));
}

}  // namespace holdwater::answer
