// SPDX-License-Identifier: MIT
#include "plan/search/recipe.hpp"

#include "facts/facts.hpp"
#include "facts/kept.hpp"
#include "heat/box.hpp"
#include "plan/search/ensemble.hpp"
#include "plan/search/parallel.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <mutex>
#include <numeric>
#include <utility>
#include <vector>

namespace holdwater::plan {
namespace {

using units::Temperature;

constexpr int most_pours = 12;

/// The likely scenario filled with so much cold water, without food.
Simulation filled_with(const Setup& setup, double cold, Temperature reading, int pours) {
    Simulation run(setup, likely_scenario(), {}, false);
    run.fill({units::Volume{cold}, reading, pours, reading, {}});
    return run;
}

/// What the fill came to, before anything that stood too high was scooped out.
double poured_in(const Setup& setup, const Simulation& filled) {
    return (filled.over_rim() + setup.most - setup.food_volume).si();
}

/// The last x between two at which a condition that turns false once still holds.
template <class Holds>
double last_that(double low, double high, const Holds& still) {
    for (int i = 0; i < 24; ++i) {
        const double middle = (low + high) / 2.0;
        (still(middle) ? low : high) = middle;
    }
    return low;
}

/// Share of the scenarios in which so many pours leave the fill short of its reading, so that one more is boiled.
double share_short(const Setup& setup, const Recipe& recipe) {
    constexpr std::size_t enough = 128;
    const std::vector<Scenario> scenarios = draw_scenarios(enough);
    std::vector<int> shorts(scenarios.size());
    each_side_by_side(scenarios.size(), [&](const std::vector<std::size_t>& group) {
        std::vector<Simulation> runs;
        std::vector<Simulation*> filled;
        runs.reserve(group.size());
        for (const std::size_t i : group) {
            filled.push_back(&runs.emplace_back(setup, scenarios[i], std::vector<heat::FoodInBath>{}, false));
        }
        Simulation::fill_all(filled, recipe);
        for (std::size_t k = 0; k < group.size(); ++k) {
            shorts[group[k]] = runs[k].fill_pours() > static_cast<std::size_t>(recipe.pours) ? 1 : 0;
        }
    });
    return std::accumulate(shorts.begin(), shorts.end(), 0.0) / static_cast<double>(enough);
}

/// With a thermometer the last pour trims to the reading: the cold litres are those with which the box then holds its
/// water.
std::optional<Recipe> recipe_by_reading(const Setup& setup, Temperature reading) {
    const double water = setup.box->water.si();
    const double near_full = std::max(2.0 * litre_step, water * (facts::facts().spread("litres").high - 1.0));
    std::optional<Recipe> too_short;  // the fewest pours that reach the reading, though not surely
    for (int pours = 1; pours <= most_pours; ++pours) {
        if (poured_in(setup, filled_with(setup, 0.0, reading, pours)) > water) {
            return too_short;  // even without cold water the box is full before the reading is reached
        }
        // More cold water asks for more boiling: the filled volume rises with it.
        const double most = last_that(0.0, water, [&](double cold) {
            return poured_in(setup, filled_with(setup, cold, reading, pours)) < water;
        });
        // To half a litre of cold water; each litre of it takes several of boiling, so that the box may end a litre
        // and more from its mark: as far as litres are poured wrong anyway.
        const double nearest = units::round_to(most, litre_step, units::Toward::nearest);
        const double other = nearest > most ? nearest - litre_step : nearest + litre_step;
        // Half a litre less cold may spare a pot.
        const double less = std::min(nearest, other) - litre_step;
        for (const double cold : {nearest, std::max(0.0, other), std::max(0.0, less)}) {
            const Simulation run = filled_with(setup, cold, reading, pours);
            const bool full = std::abs(poured_in(setup, run) - water) < near_full;
            if (full && run.fill_pours() == static_cast<std::size_t>(pours) &&
                run.filled_at() > reading - near_mark()) {
                // Where the pots fall short too often, one more is part of the plan, with the time that it takes.
                const Recipe recipe{units::Volume{cold}, reading, pours, reading, {}};
                if (share_short(setup, recipe) <= allowed_failures()) {
                    return recipe;
                }
                if (!too_short) {
                    too_short = recipe;
                    too_short->sure = false;
                }
            }
        }
    }
    return too_short;
}

/// Without one the litres are measured: as much cold water as leaves the likely fill at the reading.
std::optional<Recipe> recipe_by_measure(const Setup& setup, Temperature reading) {
    const double water = setup.box->water.si();
    for (int pours = 1; pours <= most_pours; ++pours) {
        const double least = std::max(0.0, water - setup.batch.si() * pours);
        const double most = water - setup.batch.si() * (pours - 1);
        if (most <= 0.0) {
            break;
        }
        const auto hot = [&](double cold) { return filled_with(setup, cold, reading, pours).filled_at() >= reading; };
        if (!hot(least)) {
            continue;  // even with all pots full: one pour more
        }
        const double cold =
            std::max(least, units::round_to(std::min(last_that(least, most, hot), most - litre_step / 2.0), litre_step,
                                            units::Toward::down));  // the last pour is one
        return Recipe{units::Volume{cold}, reading, pours, reading, {}};
    }
    return std::nullopt;
}

/// All that a fill without food hangs on, in a row: of two trips with the same row the recipes are the same, whatever
/// they cook and wish.
std::vector<double> what_fills(const Setup& setup, Temperature reading) {
    std::vector<double> row{reading.celsius(),
                            setup.box->water.si(),
                            setup.box->thermometer ? setup.box->thermometer->si() : -1.0,
                            setup.loss.low.si(),
                            setup.loss.likely.si(),
                            setup.loss.high.si(),
                            setup.liner.si(),
                            setup.surface.si(),
                            setup.most.si(),
                            setup.food_volume.si(),
                            heat::wind_position(setup.trip->weather.wind),
                            setup.trip->fire.cold_water.celsius(),
                            setup.batch.si(),
                            setup.round.si(),
                            static_cast<double>(setup.rounds_before),
                            setup.levels.boiling.celsius()};
    for (const units::Length side : setup.box->inside) {
        row.push_back(side.si());
    }
    // The air until the most pours are in, and the next point, to which it runs in a straight line.
    const units::Duration filled = setup.round * (most_pours + setup.rounds_before + 2) + units::hours(1);
    for (const units::History::Point& point : setup.outside.points) {
        row.push_back(point.value.celsius());
        if (point.at > filled) {
            break;
        }
    }
    return row;
}

}  // namespace

std::optional<Recipe> recipe_for(const Setup& setup, units::Temperature reading) {
    // Most of what is tried for one trip differs in the food, and is filled alike.
    using Recipes = std::map<std::vector<double>, std::optional<Recipe>>;
    constexpr std::size_t most = 2'000;
    static std::mutex mutex;
    static Recipes known;
    static std::uint64_t known_in = 0;  // generation of the facts
    const std::vector<double> row = what_fills(setup, reading);
    {
        const std::scoped_lock lock(mutex);
        if (known_in != facts::facts_generation() || known.size() > most) {
            known.clear();
            known_in = facts::facts_generation();
        }
        if (const auto found = known.find(row); found != known.end()) {
            return found->second;
        }
    }
    auto recipe = setup.box->thermometer ? recipe_by_reading(setup, reading) : recipe_by_measure(setup, reading);
    const std::scoped_lock lock(mutex);
    known.emplace(row, recipe);
    return recipe;
}

}  // namespace holdwater::plan
