// SPDX-License-Identifier: MIT
#include "plan/choose/bend_wishes.hpp"

#include "plan/advice/mend.hpp"
#include "plan/search/work.hpp"
#include "units/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;
using Kind = Lever::Kind;

/// The fewest steps of these wishes alone.
std::optional<Mend> bent_by(const Trip& trip, std::vector<Lever> levers, Feasible& feasible) {
    Solver solver(trip, std::move(levers), feasible);
    const auto steps = solver.found();
    return steps ? solver.settled(*steps) : std::nullopt;
}

/// Tolerances first: what comes out over its target can still be as it was wished.
std::optional<Mend> least_bent(const Trip& trip, Feasible& feasible) {
    std::vector<Lever> tolerance;
    std::vector<Lever> both;
    for (const Lever& lever : levers_of(trip)) {
        if (lever.kind == Kind::tolerance) {
            tolerance.push_back(lever);
        }
        if (lever.kind == Kind::tolerance || lever.kind == Kind::target) {
            both.push_back(lever);
        }
    }
    if (auto mend = bent_by(trip, tolerance, feasible)) {
        return mend;
    }
    return bent_by(trip, both, feasible);
}

/// What was settled is the least with the fire lit as it was tried; with the one that the plan chooses less may do.
trip::Trip least_with_choice(const Trip& trip, const Mend& mend, Feasible& feasible, const Effort& effort) {
    Effort whether = effort;
    whether.schedule_only = true;
    whether.diagnose = whether.ways = whether.advise = whether.compare = false;
    const Solver solver(trip, mend.levers, feasible);
    Steps steps = mend.steps;
    for (std::size_t lever = 0; lever < steps.size(); ++lever) {
        while (steps[lever] > 0 && !work_is_enough()) {
            Steps less = steps;
            --less[lever];
            if (!make_plan(solver.changed_by(less), whether)) {
                break;
            }
            steps = std::move(less);
        }
    }
    // Steps are whole kelvins; half of one may be enough.
    trip::Trip least = solver.changed_by(steps);
    trip::Trip half = least;
    bool narrower = false;
    for (std::size_t i = 0; i < half.foods.size(); ++i) {
        const auto tolerance = half.foods[i].tolerance - units::kelvins(0.5);
        if (half.foods.size() == trip.foods.size() && tolerance > trip.foods[i].tolerance) {
            half.foods[i].tolerance = tolerance;
            narrower = true;
        }
    }
    return narrower && make_plan(half, whether) ? half : least;
}

/// "63 to 66 °C".
std::string range(units::Temperature target, units::TemperatureDifference within) {
    return fmt::format("{} to {}", units::number(target.celsius(), 0),
                       units::print(target + within, units::System::both, {1, units::Toward::up}));
}

}  // namespace

std::optional<Plan> plan_of_bent_wishes(const Trip& trip, const problem::Problems& problems, const Effort& effort,
                                        Feasible& feasible) {
    const Against against = heaviest(problems);
    const bool by_wishes = against == Against::bath || against == Against::slow || against == Against::late;
    if (trip.strict || !by_wishes) {
        return std::nullopt;
    }
    const auto mend = least_bent(trip, feasible);
    if (!mend) {
        return std::nullopt;
    }
    Effort once = effort;
    once.advise = false;
    auto plan = make_plan(least_with_choice(trip, *mend, feasible, once), once);
    if (!plan) {
        return std::nullopt;
    }
    Plan bent = std::move(plan).value();
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        const trip::Food& asked = trip.foods[i];
        const trip::Food& planned = bent.trip->foods[i];
        if (planned.target <= asked.target && planned.tolerance <= asked.tolerance) {
            continue;
        }
        bent.bent.push_back({asked.name, asked.target, asked.tolerance, planned.target, planned.tolerance});
        problem::Problem note = problem::note(
            "wish-bent",
            fmt::format("{}: {} inside instead of {}: more done, or less even, than was wished", asked.name,
                        range(planned.target, planned.tolerance), range(asked.target, asked.tolerance)),
            fmt::format("target = \"{}\", tolerance = \"{}\" in the trip file says the same, and `holdwater mend` "
                        "writes it; strict = true refuses instead",
                        written(planned.target), written(planned.tolerance)));
        note.place = asked.place;
        bent.notes.insert(bent.notes.begin(), std::move(note));
    }
    return bent;
}

Mend mend_of_bent(const Trip& trip, const Plan& bent) {
    Mend mend;
    mend.changed = trip;
    const auto change = [&](const std::string& key, const std::string& value, const std::string& name, Kind kind) {
        mend.changes.push_back(
            fmt::format("{} = \"{}\"{}", key, value, trip.foods.size() > 1 ? " for " + name : std::string{}));
        mend.kinds.push_back(kind);
    };
    for (const BentWish& wish : bent.bent) {
        for (trip::Food& food : mend.changed.foods) {
            if (food.name != wish.food) {
                continue;
            }
            if (food.target != wish.target) {
                change("target", written(wish.target), food.name, Kind::target);
            }
            if (food.tolerance != wish.within) {
                change("tolerance", written(wish.within), food.name, Kind::tolerance);
            }
            food.target = wish.target;
            food.tolerance = wish.within;
        }
    }
    return mend;
}

}  // namespace holdwater::plan
