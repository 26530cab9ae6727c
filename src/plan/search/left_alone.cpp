// SPDX-License-Identifier: MIT
#include "plan/search/left_alone.hpp"

#include "plan/search/sleep_window.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

using units::Duration;
using units::Temperature;

/// The bath falls nearly in a straight line within this.
constexpr Duration follow_every = units::minutes(10);

/// Half a degree of a display: what reads so little less than a reading is read as that.
constexpr auto as_good_as = units::kelvins(0.25);

std::pair<Temperature, Temperature> air_of(const Setup& setup) {
    const Duration end = setup.trip->serve.since(setup.trip->from);
    Temperature low = setup.outside.at(Duration{0});
    Temperature high = low;
    for (Duration t{0}; t <= end; t += units::minutes(30)) {
        low = std::min(low, setup.outside.at(t));
        high = std::max(high, setup.outside.at(t));
    }
    return {low, high};
}

}  // namespace

Duration Alone::down_to(Temperature t) const {
    for (std::size_t i = 0; i < bath.points.size(); ++i) {
        const units::History::Point& here = bath.points[i];
        if (here.value > t) {
            continue;
        }
        if (i == 0) {
            return here.at;
        }
        const units::History::Point& before = bath.points[i - 1];
        return before.at + (here.at - before.at) * ((before.value - t) / (before.value - here.value));
    }
    return bath.points.back().at;
}

std::optional<Duration> Alone::keeps_after(Temperature reading) const {
    if (bath.points.front().value + error < reading - as_good_as) {
        return std::nullopt;
    }
    return std::max(Duration{0}, keeps() - down_to(reading - error));
}

std::vector<Alone> left_alone(std::vector<Simulation> runs, const Surroundings& around,
                              const std::vector<Duration>& longest, bool through) {
    std::vector<Alone> all(runs.size());
    std::vector<Simulation::Leg> legs;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        Simulation& run = runs[i];
        run.move_to(around);
        all[i].error = run.shown() - run.bath().temperature();
        all[i].level = run.level();
        all[i].bath.add(Duration{0}, run.bath().temperature());
        const auto level = through ? std::nullopt : std::optional(run.level());
        legs.push_back({&run, run.bath().now() + longest[i], level, false, &all[i].bath, follow_every});
    }
    Simulation::go_on(legs);
    return all;
}

Alone left_alone(Simulation run, const Surroundings& around, Duration longest, bool through) {
    std::vector<Simulation> alone;
    alone.push_back(std::move(run));
    return std::move(left_alone(std::move(alone), around, std::vector{longest}, through).front());
}

Surroundings coldest_of(const Setup& setup) {
    return {air_of(setup).first, heat::wind_position(setup.trip->weather.wind)};
}

Temperature warmest_of(const Setup& setup) {
    return air_of(setup).second;
}

Duration watch_from(const Setup& setup, Duration food_in) {
    const Duration settled = food_in + units::hours(1);
    const auto night = SleepWindow(*setup.trip).night_after(food_in);
    const bool asleep = night && night->from < setup.trip->serve.since(setup.trip->from);
    return asleep ? std::max(night->from, settled) : settled;
}

}  // namespace holdwater::plan
