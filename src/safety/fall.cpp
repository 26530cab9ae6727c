// SPDX-License-Identifier: MIT
#include "safety/clocks.hpp"

#include <algorithm>
#include <vector>

namespace holdwater::safety {
namespace {

using units::Duration;
using units::History;
using units::Temperature;

/// Adds every moment after `from` at which the history has a point or crosses the level.
void add_moments(std::vector<Duration>& moments, const History& history, Temperature level, Duration from) {
    for (std::size_t i = 0; i < history.points.size(); ++i) {
        const History::Point& b = history.points[i];
        if (i > 0) {
            const History::Point& a = history.points[i - 1];
            if ((a.value < level) != (b.value < level)) {
                moments.push_back(a.at + (b.at - a.at) * ((level - a.value) / (b.value - a.value)));
            }
        }
        moments.push_back(b.at);
    }
    std::erase_if(moments, [from](Duration moment) { return moment < from; });
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

}  // namespace

Fall measure_fall(const History& bath, const History& core, Temperature floor, Duration from,
                  const facts::GrowthModel& model, const History& written_core) {
    Fall fall;
    fall.times = 0;
    if (bath.empty() || core.empty()) {
        return fall;
    }
    // Between two neighbouring moments neither history crosses the floor, so its middle speaks for the whole stretch.
    std::vector<Duration> moments{from};
    add_moments(moments, bath, floor, from);
    add_moments(moments, core, floor, from);
    add_moments(moments, written_core, floor, from);
    std::sort(moments.begin(), moments.end());
    std::optional<Duration> first;
    bool running = false;
    for (std::size_t i = 1; i < moments.size(); ++i) {
        const Duration span = moments[i] - moments[i - 1];
        if (!(span > Duration{0})) {
            continue;
        }
        const Duration middle = moments[i - 1] + span / 2.0;
        const bool below = bath.at(middle) < floor || (!written_core.empty() && written_core.at(middle) < floor);
        if (!running && below) {
            running = true;
            ++fall.times;
            first = first.value_or(moments[i - 1]);
        } else if (running && !below && core.at(middle) >= floor) {
            running = false;
        }
        if (running) {
            fall.below_floor += span;
        }
    }
    const Duration end = moments.back();
    if (first) {
        fall.below_50 = bath.time_below(facts::facts().temperature("fall.deep"), *first, end);
        const double along_core = growth_with_lag(model, part(core, *first, end), model.q0_cautious);
        const double along_bath = growth_with_lag(model, part(bath, *first, end), model.q0_cautious);
        fall.growth = std::max(along_core, along_bath);
    }
    return fall;
}

}  // namespace holdwater::safety
