// SPDX-License-Identifier: MIT
#include "plan/search/deadlines.hpp"

#include "facts/facts.hpp"
#include "plan/search/left_alone.hpp"
#include "plan/search/parallel.hpp"

#include <algorithm>
#include <limits>
#include <numeric>

namespace holdwater::plan {
namespace {

using units::Duration;

/// How many of the scenarios are followed that come first to their level.
std::size_t first_ones(const Ensemble& ensemble) {
    constexpr std::size_t part = 8;
    const std::size_t size = ensemble.size();
    const auto failing = static_cast<std::size_t>(ensemble.allowed() * static_cast<double>(size - 1));
    return std::min(size, std::max(2 * failing + 2, size / part));
}

}  // namespace

Duration serving(const Setup& setup) {
    return setup.trip->serve.since(setup.trip->from);
}

std::vector<Simulation> filled(const Ensemble& ensemble, const Recipe& recipe) {
    std::vector<Simulation> runs;
    runs.reserve(ensemble.size());
    for (std::size_t i = 0; i < ensemble.size(); ++i) {
        runs.push_back(ensemble.start(i, false));
    }
    each_side_by_side(runs.size(), [&](const std::vector<std::size_t>& group) {
        std::vector<Simulation*> some;
        for (const std::size_t i : group) {
            some.push_back(&runs[i]);
        }
        Simulation::fill_all(some, recipe);
    });
    return runs;
}

std::vector<double> deadlines(const Ensemble& ensemble, std::vector<Simulation> runs, std::size_t top_up) {
    constexpr Duration stretch = units::minutes(30);
    const Duration until = serving(ensemble.setup());
    const std::size_t enough = first_ones(ensemble);
    const double latest = facts::facts().spread("top-up.late").high * 60.0;
    std::vector<double> moments(runs.size(), until.si());
    std::vector<char> met(runs.size(), 0);
    std::vector<std::size_t> still(runs.size());
    std::iota(still.begin(), still.end(), std::size_t{0});
    while (!still.empty()) {
        // By its own clock, so that it is looked at at the same moments as in one go.
        const std::vector<char> now_met = go_on_all(runs, [&](std::size_t i) {
            const Duration from = runs[i].bath().now();
            return Simulation::Leg{&runs[i], met[i] != 0 ? from : std::min(from + stretch, until), runs[i].level()};
        });
        for (const std::size_t i : still) {
            if (now_met[i] != 0) {
                met[i] = 1;
                moments[i] = runs[i].bath().now().si() - late_of(ensemble.scenario(i), top_up);
            }
        }
        std::erase_if(still, [&](std::size_t i) { return met[i] != 0 || runs[i].bath().now() >= until; });
        // Whoever has not met its level yet meets it later, and is no more than so late.
        double soonest = until.si();
        for (const std::size_t i : still) {
            soonest = std::min(soonest, runs[i].bath().now().si() - latest);
        }
        const auto sure = std::count_if(moments.begin(), moments.end(), [&](double m) { return m <= soonest; });
        if (static_cast<std::size_t>(sure) >= enough) {
            break;
        }
    }
    return moments;
}

Filled start_of(const Ensemble& ensemble, const Recipe& recipe) {
    Filled start{filled(ensemble, recipe), {}, {}};
    start.moments = deadlines(ensemble, start.runs, 0);
    return start;
}

Duration alone_in_the_cold(const Ensemble& ensemble, const std::vector<Simulation>& runs,
                           const std::vector<double>& moments) {
    const Duration end = serving(ensemble.setup());
    const auto wanted =
        static_cast<std::size_t>(ensemble.allowed() * static_cast<double>(runs.size() - 1));  // of all, from the first
    std::vector<std::size_t> order(runs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return moments[a] < moments[b]; });
    order.resize(first_ones(ensemble));
    std::sort(order.begin(), order.end());  // neighbours may stand side by side
    std::vector<Duration> alone(order.size());
    each_side_by_side(order.size(), [&](const std::vector<std::size_t>& group) {
        std::vector<Simulation> some;
        std::vector<Duration> longest;
        for (const std::size_t k : group) {
            some.push_back(runs[order[k]]);
            longest.push_back(std::max(Duration{0}, end - some.back().bath().now()));
        }
        const std::vector<Alone> left = left_alone(std::move(some), coldest_of(ensemble.setup()), longest);
        for (std::size_t k = 0; k < group.size(); ++k) {
            const Duration kept = left[k].keeps();
            alone[group[k]] = kept < longest[k] ? kept : Duration{std::numeric_limits<double>::infinity()};
        }
    });
    std::nth_element(alone.begin(), alone.begin() + static_cast<std::ptrdiff_t>(wanted), alone.end());
    return alone[wanted];
}

}  // namespace holdwater::plan
