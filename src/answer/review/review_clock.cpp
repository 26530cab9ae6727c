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

/// Fastest growth at a temperature or at any above it [log10/h].
class FastestAbove {
  public:
    explicit FastestAbove(const facts::GrowthModel& model) : model_(model) {
        constexpr double step = 0.01;  // K; the top of the curve is flat
        for (double t = model.lowest.celsius(); t < model.highest.celsius(); t += step) {
            const double rate = safety::growth_rate(model, Temperature{t});
            if (rate > peak_) {
                peak_ = rate;
                optimum_ = t;
            }
        }
    }
    double operator()(Temperature t) const { return t.celsius() < optimum_ ? peak_ : safety::growth_rate(model_, t); }

  private:
    const facts::GrowthModel& model_;
    double peak_ = 0.0;
    double optimum_ = 0.0;
};

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
    const Duration done = std::min(course.done.value_or(course.out), course.out);
    if (hold_floor == course.cook_floor) {
        clocks.fall = measure(course.in, course.out, hold_floor);
        clocks.cooking = measure(course.in, done, hold_floor).below_floor;
        clocks.holding = clocks.fall.below_floor - clocks.cooking;
        return clocks;
    }
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

double growth_exponent(const Course& course, const facts::GrowthModel& model) {
    const FastestAbove fastest(model);
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
        return runs ? std::max({fastest(seen), safety::growth_rate(model, core), safety::growth_rate(model, fast)})
                    : 0.0;
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
