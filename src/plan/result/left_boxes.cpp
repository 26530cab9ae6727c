// SPDX-License-Identifier: MIT
#include "plan/result/left_boxes.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <limits>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

constexpr std::size_t enough = 256;  // scenarios: the same quantile of 8,192 lies within some minutes

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

LeftBox live(const Ensemble& ensemble, const Schedule& schedule, std::size_t i, Duration watch) {
    const Setup& setup = ensemble.setup();
    const Surroundings cold = coldest_of(setup);
    const Surroundings calm{warmest_of(setup), heat::wind_position(facts::Wind::still)};
    const Surroundings rough{cold.air, heat::wind_position(facts::Wind::windy)};
    LeftBox box;
    std::optional<Simulation> at_watch;
    std::optional<Simulation> before;  // that was left last, as it was before it went on
    const auto see = [&](Temperature reading) {
        box.lowest = std::min(box.lowest, reading);
        box.highest = std::max(box.highest, reading);
    };
    box.lowest = units::celsius(std::numeric_limits<double>::max());
    box.highest = units::celsius(std::numeric_limits<double>::lowest());
    const auto watch_by = [&](Duration moment) {
        if (!at_watch && moment > watch) {
            at_watch = before;
            at_watch->advance_to(watch);
            see(at_watch->shown());
        }
    };
    const Simulation end = replay(ensemble, schedule, i, false, [&](const Simulation& run) {
        if (before) {
            watch_by(run.bath().now());
        }
        box.poured.push_back(left_alone(run, cold, longest));
        box.when.push_back(run.bath().now());
        if (box.poured.size() > 1) {
            box.calm.push_back(left_alone(run, calm, longest));
            box.rough.push_back(left_alone(run, rough, longest));
            if (at_watch) {
                see(run.readings().back());
                see(run.shown());
            }
        }
        before = run;
    });
    watch_by(std::max(end.bath().now(), watch + units::minutes(1)));
    see(end.shown());
    box.settled = left_alone(*at_watch, cold, longest);
    at_watch->set_reading(std::max(at_watch->shown(), schedule.recipe.top_up_mark));
    box.marked = left_alone(*at_watch, cold, longest, true);
    if (box.calm.empty()) {
        box.calm.push_back(left_alone(*at_watch, calm, longest));
        box.rough.push_back(left_alone(*at_watch, rough, longest));
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
    : allowed_(ensemble.allowed()), boxes_(std::min(ensemble.size(), enough)) {
    Simulation likely(ensemble.setup(), likely_scenario(), {}, false);
    likely.fill(schedule.recipe);
    watch_from_ = plan::watch_from(ensemble.setup(), likely.food_in());
    for_each_index(boxes_.size(), [&](std::size_t i) { boxes_[i] = live(ensemble, schedule, i, watch_from_); });
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

Duration LeftBoxes::after_reading(Temperature reading) const {
    return all_but_few([&](const LeftBox& box) { return keeps_after(box, reading, watch_from_); });
}

Duration LeftBoxes::after_any_pour() const {
    return all_but_few([](const LeftBox& box) { return shortest_of(box.poured); });
}

Duration LeftBoxes::after_serving() const {
    return all_but_few([](const LeftBox& box) { return box.served.keeps(); });
}

Duration LeftBoxes::after_top_up(std::vector<Alone> LeftBox::*air) const {
    return all_but_few([air](const LeftBox& box) { return shortest_of(box.*air); });
}

}  // namespace holdwater::plan
