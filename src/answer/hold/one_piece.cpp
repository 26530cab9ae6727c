// SPDX-License-Identifier: MIT
#include "answer/hold/one_piece.hpp"

#include "answer/hold/hold.hpp"
#include "facts/facts.hpp"
#include "safety/kill.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::Temperature;

constexpr double kill_horizon = 72.0 * 3600.0;  // s

Temperature temperature(double theta, Temperature start, Temperature bath) {
    return bath + (start - bath) * theta;
}

/// Rate of kill [log10/s]: 10^((T - T_D)/z) / D.
/// T: core [C]; D: decimal reduction time [s] at T_D; z [K]. Source: log-linear model, as in baldwin-2012. Valid where
/// D and z were measured. Outside: goes on by the same law, without a floor.
double kill_rate(const KillFigures& figures, Temperature core) {
    return std::pow(10.0, (core - figures.at) / figures.z) / figures.d.si();
}

std::optional<Duration> come_up_of(const heat::Modes& modes, const PieceQuestion& question) {
    const Temperature from = facts::facts().temperature("come-up.from");
    const Temperature to = facts::facts().temperature("come-up.to");
    if (question.start >= to) {
        return Duration{0.0};
    }
    const auto begun = moment_at(modes, question.start, std::max(question.bath, question.start), from);
    const auto done = moment_at(modes, question.start, std::max(question.bath, question.start), to);
    if (!begun || !done) {
        return std::nullopt;
    }
    return *done - *begun;
}

/// A core nears its bath and never reaches it, but after long enough rounding puts it there: a row at exactly the bath
/// would then be credited.
void keep_short_of_bath(units::History& core, const PieceQuestion& question) {
    constexpr units::TemperatureDifference gap = units::kelvins(1e-6);
    if (question.start < question.bath) {
        for (units::History::Point& point : core.points) {
            point.value = std::min(point.value, question.bath - gap);
        }
    }
}

/// Where the core is asked no more than the floor of the bath, a bath at its floor will do: the core counts as arrived
/// half a kelvin short of it (facts hold.short-of-bath). The kill rows stay as they are.
safety::Standard with_bath_as_floor(safety::Standard standard) {
    if (standard.core_at_least <= standard.cook_floor) {
        standard.core_at_least = standard.core_at_least - facts::facts().difference("hold.short-of-bath");
    }
    return standard;
}

/// When the stricter published rows of the same table are met: shown beside the answer, they decide nothing.
std::optional<Duration> seven_log(const units::History& core, const safety::Standard& standard,
                                  std::optional<Duration> come_up) {
    if (standard.kill->key != "us-red-meat-6.5") {
        return std::nullopt;
    }
    return safety::moment_met(facts::facts().kill_standard("us-red-meat-7"), core, safety::adaptation_factor(come_up));
}

}  // namespace

std::optional<Duration> moment_at(const heat::Modes& modes, Temperature start, Temperature bath, Temperature level) {
    const bool cools = bath < start;
    if (cools ? start <= level : start >= level) {
        return Duration{0.0};
    }
    if (start == bath) {
        return std::nullopt;
    }
    const double wanted = (level - bath) / (start - bath);
    if (!(wanted > 0.0)) {
        return std::nullopt;  // the core nears the bath and never quite reaches it
    }
    const auto above = [&](double t) { return heat::core_at(modes, Duration{t}) > wanted; };
    // From the late end down, so that what is left of the cut-off series in the first seconds cannot be taken for it.
    double late = (1.0 - std::log(wanted)) / modes.modes.front().rate;
    while (above(late)) {
        late *= 2.0;
    }
    double early = late / 2.0;
    constexpr double soonest = 1e-6;  // s
    while (!above(early)) {
        late = early;
        early /= 2.0;
        if (early < soonest) {
            return Duration{0.0};
        }
    }
    constexpr double exact = 1e-9;
    while (late - early > exact * late) {
        const double middle = 0.5 * (early + late);
        (above(middle) ? early : late) = middle;
    }
    return Duration{late};
}

std::optional<Duration> moment_killed(const heat::Modes& modes, Temperature start, Temperature bath,
                                      const KillFigures& figures) {
    const auto rate = [&](double t) {
        return kill_rate(figures, temperature(heat::core_at(modes, Duration{t}), start, bath));
    };
    // Simpson's rule over stretches that grow with time: the core changes less and less.
    const auto killed = [&](double from, double to) {
        return (to - from) / 6.0 * (rate(from) + 4.0 * rate(0.5 * (from + to)) + rate(to));
    };
    constexpr double growth = 1.02;
    constexpr double longest = 300.0;  // s
    double sum = 0.0;
    double stretch = 0.5;
    for (double t = 0.0; t < kill_horizon; t += stretch, stretch = std::min(stretch * growth, longest)) {
        const double next = sum + killed(t, t + stretch);
        if (next < figures.log10) {
            sum = next;
            continue;
        }
        double early = t;
        double late = t + stretch;
        while (late - early > 1e-6 * late) {
            const double middle = 0.5 * (early + late);
            (sum + killed(t, middle) < figures.log10 ? early : late) = middle;
        }
        return Duration{late};
    }
    return std::nullopt;
}

problem::Result<PieceTimes> times_of(const PieceQuestion& question, const heat::FoodProperties& properties,
                                     units::FilmCoefficient film, const KillRule& rule) {
    const auto modes = heat::modes_of(question.body, properties, film);
    if (!modes) {
        return modes.problems();
    }
    PieceTimes times;
    times.reach = moment_at(*modes, question.start, question.bath, question.target);
    times.come_up = come_up_of(*modes, question);
    if (const auto* figures = std::get_if<KillFigures>(&rule)) {
        times.kill = moment_killed(*modes, question.start, question.bath, *figures);
        times.safe = times.kill;
    } else if (const auto* standard = std::get_if<safety::Standard>(&rule)) {
        auto core =
            core_in_constant_bath({question.body, properties, film, question.bath, question.start, question.target});
        keep_short_of_bath(core.value(), question);
        const CoreMilestones safe = judge_core(core.value(), with_bath_as_floor(*standard));
        times.kill = safe.kill_met;
        times.kill_7 = seven_log(core.value(), *standard, safe.come_up);
        times.safe = safe.safe;
    }
    if (question.at) {
        const auto at = [&](double theta) { return temperature(theta, question.start, question.bath); };
        times.core = at(question.at->si() > 0.0 ? heat::core_at(*modes, *question.at) : 1.0);
        times.surface = at(question.at->si() > 0.0 ? heat::surface_at(*modes, *question.at) : 1.0);
        times.mean = at(question.at->si() > 0.0 ? heat::mean_at(*modes, *question.at) : 1.0);
    }
    return times;
}

}  // namespace holdwater::answer
