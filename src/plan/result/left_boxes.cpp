// SPDX-License-Identifier: MIT
#include "plan/result/left_boxes.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"
#include "units/print.hpp"

#include <algorithm>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

constexpr std::size_t scenarios_for_times = 512;  // scenarios: the same quantile of 8,192 lies within some minutes

/// Nobody asks for longer; whatever keeps longer is said to keep this long.
constexpr Duration longest = units::hours(24);

/// The coldest air of the hours in which the meal may wait.
Surroundings after_serving_in(const Setup& setup) {
    const Duration end = setup.trip->serve.since(setup.trip->from);
    Surroundings around = coldest_of(setup);
    around.air = setup.outside.at(end);
    for (Duration t = end; t <= end + facts::facts().duration("wait.longest"); t += units::minutes(30)) {
        around.air = std::min(around.air, setup.outside.at(t));
    }
    return around;
}

/// One scenario's box at a moment of the schedule, not before its food is in.
Simulation box_at(const Ensemble& ensemble, const Schedule& schedule, std::size_t i, Duration moment) {
    std::optional<Simulation> last;
    replay(ensemble, schedule, i, false, [&](const Simulation& run) {
        if (!last || run.bath().now() <= moment) {
            last = run;
        }
    });
    last->advance_to(moment);
    return *std::move(last);
}

/// What is read last before the box is left: the top-up mark; where nobody is to top up from `watch` on, the most that
/// the box shows then.
Temperature last_reading(const Ensemble& ensemble, const Schedule& schedule, std::size_t count, Duration watch) {
    const bool poured = std::any_of(schedule.top_ups.begin(), schedule.top_ups.end(),
                                    [&](const ScheduledTopUp& top_up) { return top_up.at >= watch; });
    if (poured) {
        return schedule.recipe.top_up_mark;
    }
    std::vector<Temperature> shown(count);
    for_each_index(count, [&](std::size_t i) { shown[i] = box_at(ensemble, schedule, i, watch).shown(); });
    const double most = quantile_high(std::move(shown), 1.0 - allowed_failures()).celsius();
    return std::min(schedule.recipe.top_up_mark, units::celsius(units::round_to(most, 1.0, units::Toward::nearest)));
}

LeftBox live(const Ensemble& ensemble, const Schedule& schedule, std::size_t i, Duration watch, Temperature reading) {
    const Setup& setup = ensemble.setup();
    const Surroundings cold = coldest_of(setup);
    const Surroundings calm{warmest_of(setup), heat::wind_position(facts::Wind::still)};
    const Surroundings rough{cold.air, heat::wind_position(facts::Wind::windy)};
    LeftBox box;
    Simulation settled = box_at(ensemble, schedule, i, watch);
    box.lowest = box.highest = settled.shown();
    const auto see = [&](Temperature read) {
        box.lowest = std::min(box.lowest, read);
        box.highest = std::max(box.highest, read);
    };
    const Simulation end = replay(ensemble, schedule, i, false, [&](const Simulation& run) {
        box.poured.push_back(left_alone(run, cold, longest));
        box.when.push_back(run.bath().now());
        if (box.poured.size() > 1) {
            box.calm.push_back(left_alone(run, calm, longest));
            box.rough.push_back(left_alone(run, rough, longest));
            if (run.bath().now() >= watch) {
                see(run.readings().back());
                see(run.shown());
            }
        }
    });
    see(end.shown());
    box.settled = left_alone(settled, cold, longest);
    settled.set_reading(std::max(settled.shown(), reading));
    box.marked = left_alone(settled, cold, longest, true);
    if (box.calm.empty()) {
        box.calm.push_back(left_alone(settled, calm, longest));
        box.rough.push_back(left_alone(settled, rough, longest));
    }
    box.served = left_alone(end, after_serving_in(setup), longest);
    return box;
}

/// The shortest that it keeps after this reading, over all ways in which it comes to be read from a moment on.
Duration keeps_after(const LeftBox& box, Temperature reading, Duration watch) {
    std::vector<const Alone*> ways{&box.settled};
    for (std::size_t k = 0; k < box.poured.size(); ++k) {
        if (box.when[k] >= watch) {
            ways.push_back(&box.poured[k]);
        }
    }
    if (ways.size() == 1) {
        ways.push_back(&box.marked);  // nobody is to top up any more, but may
    }
    std::optional<Duration> shortest;
    const Alone* warmest = ways.front();
    for (const Alone* way : ways) {
        if (const auto keeps = way->keeps_after(reading)) {
            shortest = shortest ? std::min(*shortest, *keeps) : *keeps;
        }
        if (way->bath.points.front().value > warmest->bath.points.front().value) {
            warmest = way;
        }
    }
    // What never reads so much keeps no longer than from the most that it reads.
    return shortest.value_or(warmest->keeps());
}

Duration shortest_of(const std::vector<Alone>& ways) {
    Duration shortest = longest;
    for (const Alone& way : ways) {
        shortest = std::min(shortest, way.keeps());
    }
    return shortest;
}

}  // namespace

LeftBoxes::LeftBoxes(const Ensemble& ensemble, const Schedule& schedule)
    : allowed_(ensemble.allowed()), boxes_(std::min(ensemble.size(), scenarios_for_times)) {
    Simulation likely(ensemble.setup(), likely_scenario(), {}, false);
    likely.fill(schedule.recipe);
    watch_from_ = plan::watch_from(ensemble.setup(), likely.food_in());
    last_reading_ = plan::last_reading(ensemble, schedule, boxes_.size(), watch_from_);
    for_each_index(boxes_.size(),
                   [&](std::size_t i) { boxes_[i] = live(ensemble, schedule, i, watch_from_, last_reading_); });
}

template <class Keeps>
Duration LeftBoxes::all_but_few(const Keeps& keeps) const {
    std::vector<Duration> kept;
    kept.reserve(boxes_.size());
    for (const LeftBox& box : boxes_) {
        kept.push_back(keeps(box));
    }
    return quantile_low(std::move(kept), allowed_);
}

std::vector<Duration> LeftBoxes::after_readings(const std::vector<Temperature>& readings) const {
    std::vector<std::vector<Duration>> kept(readings.size());  // [reading][box]
    for (std::size_t r = 0; r < readings.size(); ++r) {
        for (const LeftBox& box : boxes_) {
            kept[r].push_back(keeps_after(box, readings[r], watch_from_));
        }
    }
    // A box that fails one row need not be one that fails another: each row alone is made so strict that all of them
    // together fail no more often than a promise may.
    const auto may_fail = static_cast<std::size_t>(allowed_ * static_cast<double>(boxes_.size()));
    std::vector<Duration> times;
    for (double part = 1.0;; part -= 0.1) {
        times.clear();
        for (const std::vector<Duration>& of_row : kept) {
            times.push_back(quantile_low(of_row, allowed_ * std::max(part, 0.0)));
        }
        std::size_t failing = 0;
        for (std::size_t b = 0; b < boxes_.size(); ++b) {
            bool fails = false;
            for (std::size_t r = 0; r < readings.size(); ++r) {
                fails = fails || kept[r][b] < times[r];
            }
            failing += fails ? 1 : 0;
        }
        if (failing <= may_fail || part <= 0.0) {
            return times;
        }
    }
}

Duration LeftBoxes::after_any_pour() const {
    return all_but_few([](const LeftBox& box) { return shortest_of(box.poured); });
}

Duration LeftBoxes::after_serving() const {
    return all_but_few([](const LeftBox& box) { return box.served.keeps(); });
}

Temperature LeftBoxes::reading_at_serving() const {
    std::vector<Temperature> shown;
    shown.reserve(boxes_.size());
    for (const LeftBox& box : boxes_) {
        shown.push_back(box.served.bath.points.front().value + box.served.error);
    }
    return quantile_low(std::move(shown), allowed_);
}

Duration LeftBoxes::after_top_up(std::vector<Alone> LeftBox::*air) const {
    return all_but_few([air](const LeftBox& box) { return shortest_of(box.*air); });
}

}  // namespace holdwater::plan
