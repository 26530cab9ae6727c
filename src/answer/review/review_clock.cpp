// SPDX-License-Identifier: MIT
#include "answer/review/review_clock.hpp"

#include "safety/growth.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

constexpr double integrate_every = 60.0;  // s; temperatures move by hundredths of a kelvin in the meantime

/// The written core for the clock: warm until it counts, from then on what the core did.
History written_of(const Course& course, Duration from, Duration to) {
    if (!course.core_counts_from || *course.core_counts_from >= to) {
        return {};
    }
    const Duration start = std::max(from, *course.core_counts_from);
    History written;
    if (start > from) {
        const Temperature warm = std::max(course.hold_floor, course.cook_floor);
        written.add(from, warm);
        written.add(start, warm);
    }
    const History core = part_of(course.core, start, to);
    written.points.insert(written.points.end(), core.points.begin(), core.points.end());
    return written;
}

}  // namespace

History part_of(const History& whole, Duration from, Duration to) {
    History part;
    part.add(from, whole.at(from));
    for (const History::Point& point : whole.points) {
        if (point.at > from && point.at <= to) {
            part.points.push_back(point);
        }
    }
    if (part.points.back().at < to) {
        part.add(to, whole.at(to));
    }
    return part;
}

Clocks clocks_of(const Course& course) {
    static const facts::GrowthModel none{};  // growth is worked out apart
    const Temperature hold_floor = std::max(course.hold_floor, course.cook_floor);
    const auto measure = [&](Duration from, Duration to, Temperature floor) {
        return safety::measure_fall(part_of(course.bath, from, to), part_of(course.core, from, to), floor, from, none,
                                    written_of(course, from, to));
    };
    Clocks clocks;
    Duration done = std::min(course.done.value_or(course.out), course.out);
    if (hold_floor == course.cook_floor) {
        clocks.fall = measure(course.in, course.out, hold_floor);
        clocks.cooking = measure(course.in, done, hold_floor).below_floor;
        clocks.holding = clocks.fall.below_floor - clocks.cooking;
        return clocks;
    }
    done = std::min(done, course.hold_from.value_or(done));
    clocks.fall = measure(course.in, done, course.cook_floor);
    clocks.cooking = clocks.fall.below_floor;
    if (done < course.out) {
        const safety::Fall held = measure(done, course.out, hold_floor);
        clocks.holding = held.below_floor;
        clocks.fall.below_floor += held.below_floor;
        clocks.fall.below_50 += held.below_50;
        const bool goes_on = course.bath.at(done) < course.cook_floor && held.times > 0;
        clocks.fall.times += held.times - (goes_on ? 1 : 0);
    }
    return clocks;
}

double likely_growth_exponent(const Course& course, const facts::GrowthModel& model) {
    std::optional<Duration> from = course.core.first_at_or_above(course.cook_floor, course.in);
    const auto& points = course.bath.points;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const bool lasts = points[i].at > points[i - 1].at && points[i].at > course.in;
        if (lasts && std::min(points[i - 1].value, points[i].value) < course.cook_floor) {
            const Duration fell = std::max(points[i - 1].at, course.in);
            from = std::min(from.value_or(fell), fell);
            break;
        }
    }
    if (!from || *from >= course.out) {
        return 0.0;
    }
    const auto along = [&](const History& history) {
        return safety::growth_without_lag(model, part_of(history, *from, course.out));
    };
    return std::max(along(course.core), along(course.seen));
}

double growth_exponent(const Course& course, const facts::GrowthModel& model) {
    const safety::FastestAbove fastest(model);
    const std::optional<Duration> warm = course.core.first_at_or_above(course.cook_floor, course.in);
    bool runs = false;  // the clock, before the core has been warm
    const auto rate = [&](Duration t) {
        const Temperature seen = course.seen.at(t);
        const Temperature core = course.core.at(t);
        const Temperature fast = course.core_fast.at(t);
        if (warm && t >= *warm) {
            return fastest(std::min({seen, core, fast}));
        }
        const bool bath_below = course.bath.at(t) < course.cook_floor;
        runs = bath_below || (runs && core < course.cook_floor);
        const double surface = fastest(seen);
        return runs ? std::max({surface, safety::growth_rate(model, core), safety::growth_rate(model, fast)}) : surface;
    };
    const double span = (course.out - course.in).si();
    const auto steps = static_cast<std::size_t>(std::ceil(span / integrate_every));
    double sum = 0.0;
    for (std::size_t i = 0; i < steps; ++i) {
        const double dt = span / static_cast<double>(steps);
        sum += rate(course.in + Duration{(static_cast<double>(i) + 0.5) * dt}) * dt;
    }
    return sum / units::hours(1).si();
}

}  // namespace holdwater::answer
