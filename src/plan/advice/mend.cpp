// SPDX-License-Identifier: MIT
#include "plan/advice/mend.hpp"

#include "facts/facts.hpp"
#include "plan/choose/start.hpp"
#include "plan/search/work.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;

/// Where the plan lights the fire later than at the first moment, or fills less water in, and would not choose that by
/// itself, the trip says it.
Lever said_choice(const Trip& chosen) {
    Lever lever;
    lever.kind = Lever::Kind::start;
    lever.at_once = facts::facts().value("bend.start");
    const units::LocalTime at = chosen.light_fire.value();
    const units::Volume water = chosen.boxes.front().water;
    lever.pull = [at, water](Trip& t, int) {
        t.light_fire = at;
        if (t.boxes.size() == 1) {
            t.boxes.front().water = water;
        }
    };
    lever.words = [](const Trip& before, const Trip& after) {
        std::string words =
            fmt::format("light_fire = {} (the bath need not be held for longer)", after.light_fire->iso());
        if (after.boxes.front().water != before.boxes.front().water) {
            words += fmt::format(", and water = \"{}\" (sooner boiled)", written(after.boxes.front().water));
        }
        return words;
    };
    return lever;
}

std::optional<Mend> settled(const Trip& trip, const std::vector<Lever>& levers, const Steps& steps, Solver& solver,
                            Feasible& feasible) {
    const Trip changed = solver.changed_by(steps);
    const Trip chosen = feasible.chosen(changed);
    if (trip::canonical(chosen) == trip::canonical(changed) || feasible.fully(changed)) {
        return solver.settled(steps);
    }
    std::vector<Lever> more = levers;
    more.push_back(said_choice(chosen));  // after those that change the water
    Steps pulled = steps;
    pulled.push_back(1);
    return Solver(trip, std::move(more), feasible).settled(std::move(pulled));
}

}  // namespace

std::string Mend::advice() const {
    std::string text;
    for (const std::string& change : changes) {
        text += (text.empty() ? "" : ", and ") + change;
    }
    return text;
}

namespace {

std::optional<Mend> least_of(const Trip& trip, const std::vector<Lever>& levers, Feasible& feasible,
                             std::optional<double> less_than = std::nullopt) {
    Solver solver(trip, levers, feasible);
    const auto steps = solver.found(less_than);
    return steps ? settled(trip, levers, *steps, solver, feasible) : std::nullopt;
}

/// Whether a mend moves the meal or the first moment: then less water, which is sooner boiled, may spare some of it.
bool takes_time(const Mend& mend) {
    return std::any_of(mend.kinds.begin(), mend.kinds.end(), [](Lever::Kind kind) {
        return kind == Lever::Kind::later || kind == Lever::Kind::earlier || kind == Lever::Kind::pots;
    });
}

}  // namespace

std::optional<Mend> mend_of(const Trip& trip, Feasible& feasible) {
    const std::vector<Lever> levers = levers_of(trip);
    auto mend = least_of(trip, levers, feasible);
    if (!mend && !work_is_enough()) {
        feasible.look_closer();
        mend = least_of(trip, levers, feasible);
    }
    if (mend && takes_time(*mend) && !work_is_enough() && trip.boxes.size() == 1 &&
        waters_of_fewer_rounds(trip).size() > 1) {
        feasible.try_less_water();
        auto other = least_of(trip, levers, feasible, mend->cost);
        if (other && other->kinds.size() <= mend->kinds.size() && other->cost < mend->cost) {
            mend = std::move(other);
        }
    }
    return mend;
}

}  // namespace holdwater::plan
