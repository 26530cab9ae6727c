// SPDX-License-Identifier: MIT
#include "plan/search/recipe.hpp"

#include "facts/facts.hpp"
#include "plan/search/ensemble.hpp"
#include "plan/search/parallel.hpp"
#include "units/print.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

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
    for_each_index(scenarios.size(), [&](std::size_t i) {
        Simulation run(setup, scenarios[i], {}, false);
        run.fill(recipe);
        shorts[i] = run.fill_pours() > static_cast<std::size_t>(recipe.pours) ? 1 : 0;
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

}  // namespace

std::optional<Recipe> recipe_for(const Setup& setup, units::Temperature reading) {
    return setup.box->thermometer ? recipe_by_reading(setup, reading) : recipe_by_measure(setup, reading);
}

}  // namespace holdwater::plan
