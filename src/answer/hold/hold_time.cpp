// SPDX-License-Identifier: MIT
#include "answer/hold/hold_time.hpp"

#include "answer/hold/hold.hpp"
#include "answer/spread/draw.hpp"
#include "facts/facts.hpp"
#include "safety/clocks.hpp"
#include "safety/net_growth.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::Temperature;

/// The common clock: steps of a second first, each length so many times before it doubles, up to some minutes, so that
/// a straight line between two moments is good to 0.01 K.
const std::vector<double>& clock_of_holds() {
    static const std::vector<double> moments = [] {
        constexpr int steps_per_length = 25;
        constexpr double longest = 256.0;
        constexpr double last = 72.0 * 3600.0;
        std::vector<double> all{0.0};
        for (double length = 1.0; all.back() < last; length = std::min(2.0 * length, longest)) {
            for (int i = 0; i < steps_per_length; ++i) {
                all.push_back(all.back() + length);
            }
        }
        return all;
    }();
    return moments;
}

/// The value that all but `tail` of them lie at or below; nothing if that one never comes.
std::optional<Duration> reached_by(std::vector<double> times, double tail) {
    const auto index = static_cast<std::ptrdiff_t>(std::ceil((1.0 - tail) * static_cast<double>(times.size() - 1)));
    std::nth_element(times.begin(), times.begin() + index, times.end());
    const double time = times[static_cast<std::size_t>(index)];
    return std::isfinite(time) ? std::optional(Duration{time}) : std::nullopt;
}

/// Safe, and nothing left of what grew in it while it warmed.
std::optional<Duration> ready_of(const units::History& core, const std::optional<Duration>& safe,
                                 const safety::Standard& standard) {
    return safe ? safety::ready_after(standard, core, *safe).undone : std::nullopt;
}

double or_never(const std::optional<Duration>& time) {
    return time ? time->si() : std::numeric_limits<double>::infinity();
}

}  // namespace

problem::Result<HoldTimes> HoldTimes::of(const Piece& piece, const safety::Standard& standard,
                                         units::TemperatureDifference thermometer, std::optional<std::size_t> ways) {
    const facts::Facts& facts = facts::facts();
    HoldTimes times;
    times.standard_ = standard;
    const std::size_t points = ways.value_or(static_cast<std::size_t>(facts.value("hold.points")));
    for (const std::vector<double>& share : even_shares(6, points)) {
        const PieceErrors errors{
            place_at(facts.spread("thickness"), share[0]), place_at(facts.spread("diffusivity"), share[1]),
            place_at(facts.spread("film"), share[2]), units::kelvins(value_at(facts.spread("start"), share[3]))};
        auto turned_out = varied(piece, errors);
        if (!turned_out) {
            return turned_out.problems();
        }
        const double error = thermometer.si() * place_at(facts.spread("thermometer"), share[4]);
        const double layer = std::max(0.0, value_at(facts.spread("unstirred"), share[5]));
        const Temperature start = turned_out->start;
        times.ways_.push_back({heat::CoreResponse(turned_out->modes), start, units::kelvins(error + layer), {1.0}});
    }
    return times;
}

void HoldTimes::remember(const Way& way, std::size_t upto) const {
    const std::vector<double>& clock = clock_of_holds();
    while (way.core.size() <= upto) {
        const std::size_t next = way.core.size();
        way.core.push_back(way.response.after(clock[next] - clock[next - 1]));
    }
}

double HoldTimes::share_at(const Way& way, double moment) const {
    const std::vector<double>& clock = clock_of_holds();
    if (!(moment > 0.0)) {
        return 1.0;
    }
    const auto after = std::lower_bound(clock.begin(), clock.end(), moment);
    const auto i = std::min(static_cast<std::size_t>(after - clock.begin()), clock.size() - 1);
    remember(way, i);
    const double part = std::min(1.0, (moment - clock[i - 1]) / (clock[i] - clock[i - 1]));
    return way.core[i - 1] + part * (way.core[i] - way.core[i - 1]);
}

HoldTimes::Milestones HoldTimes::milestones(const Way& way, Temperature reading, double soon) const {
    // A core nears its bath and never reaches it, but rounding could put it there and credit a row at exactly the bath.
    constexpr units::TemperatureDifference gap = units::kelvins(1e-6);
    const Temperature bath = reading - way.colder;
    const Temperature most = bath - gap;
    if (most < standard_.kill->rows.front().core || most < standard_.core_at_least) {
        return {};
    }
    const std::vector<double>& clock = clock_of_holds();
    units::History core;
    core.points.reserve(256);
    // Looked at after ever longer stretches: most ways are safe long before the last moment.
    const double horizon = facts::facts().duration("hold.horizon").si();
    for (double stretch = std::min(soon, horizon);; stretch = std::min(1.5 * stretch, horizon)) {
        for (std::size_t i = core.points.size(); i < clock.size() && clock[i] <= stretch; ++i) {
            remember(way, i);
            core.add(Duration{clock[i]}, std::min(most, bath + (way.start - bath) * way.core[i]));
        }
        const CoreMilestones so_far = judge_core(core, standard_);
        const auto ready = ready_of(core, so_far.safe, standard_);
        if (ready || stretch >= horizon) {
            return {ready, so_far.come_up};
        }
    }
}

HoldTime HoldTimes::at(Temperature reading) const {
    const double tail = 1.0 - facts::facts().value("quantile.cautious");
    std::vector<double> safe;
    std::vector<double> come_up;
    double soon = 2.0 * 3600.0;
    for (const Way& way : ways_) {
        const Milestones reached = milestones(way, reading, soon);
        if (reached.safe) {
            soon = std::max(soon, 1.05 * reached.safe->si());  // the other ways are not far from it
        }
        safe.push_back(or_never(reached.safe));
        come_up.push_back(or_never(reached.come_up));
    }
    HoldTime time;
    time.likely = reached_by(safe, 0.5);
    time.cautious = reached_by(safe, tail);
    time.come_up = reached_by(come_up, tail);
    const safety::ComeUpVerdict warms = safety::judge_come_up(time.come_up);
    // A piece that must be finished over the fire has to be thin enough for that: it may not even warm slowly.
    const bool too_slow =
        standard_.finish ? warms != safety::ComeUpVerdict::fine : warms == safety::ComeUpVerdict::refused;
    time.allowed = too_slow ? std::nullopt : time.cautious;
    return time;
}

std::optional<Duration> HoldTimes::safe_with_dip(const Way& way, Temperature reading,
                                                 units::TemperatureDifference depth, double from, double to,
                                                 double until) const {
    const Temperature bath = reading - way.colder;
    units::History core;
    for (const double t : clock_of_holds()) {
        // The core answers in proportion to the bath: a dip is a step down and, later, the same step up.
        const double cooled = share_at(way, t - to) - share_at(way, t - from);
        core.add(Duration{t}, bath + (way.start - bath) * share_at(way, t) - depth * cooled);
        if (t > until) {
            break;
        }
    }
    return ready_of(core, judge_core(core, standard_).safe, standard_);
}

std::optional<int> HoldTimes::dip_factor(Temperature reading, Temperature floor) const {
    const auto enough = at(reading).cautious;
    if (!enough) {
        return std::nullopt;
    }
    constexpr std::size_t ways = 64;  // of an evenly spread set, its beginning is one as well
    const double tail = 1.0 - facts::facts().value("quantile.cautious");
    const double hold = enough->si();
    int most = 0;
    for (const double length : {0.5 * 3600.0, 2.0 * 3600.0}) {
        for (const double begun : {0.0, 0.3, 0.6, 0.95}) {
            const double from = begun * hold;
            const double until = hold + 10.0 * length;
            std::vector<double> safe;
            for (std::size_t i = 0; i < std::min(ways, ways_.size()); ++i) {
                // A way that is late without a dip too is among those that may fail.
                safe.push_back(or_never(safe_with_dip(ways_[i], reading, reading - floor, from, from + length, until)));
            }
            const auto late = reached_by(safe, tail);
            if (!late) {
                return std::nullopt;
            }
            most = std::max(most, static_cast<int>(std::ceil((late->si() - hold) / length)));
        }
    }
    return std::max(most, 1);
}

std::optional<units::Length> thickest_allowed(Piece piece, const safety::Standard& standard,
                                              units::TemperatureDifference thermometer, Temperature reading) {
    const auto allowed = [&](int millimetres, std::optional<std::size_t> ways) {
        piece.body.thickness = units::millimetres(millimetres);
        const auto times = HoldTimes::of(piece, standard, thermometer, ways);
        return times && times->at(reading).allowed;
    };
    constexpr int thinnest = 5;
    constexpr int too_thick = 300;
    constexpr std::size_t few = 32;
    if (!allowed(thinnest, std::nullopt)) {
        return std::nullopt;
    }
    // A guess from few ways, then step by step with all of them.
    int good = thinnest;
    int bad = too_thick;
    while (bad - good > 1) {
        const int middle = (good + bad) / 2;
        (allowed(middle, few) ? good : bad) = middle;
    }
    while (good > thinnest && !allowed(good, std::nullopt)) {
        --good;
    }
    while (good + 1 < too_thick && allowed(good + 1, std::nullopt)) {
        ++good;
    }
    return units::millimetres(good);
}

}  // namespace holdwater::answer
