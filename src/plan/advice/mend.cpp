// SPDX-License-Identifier: MIT
#include "plan/advice/mend.hpp"

#include "facts/facts.hpp"

#include <fmt/format.h>

#include <utility>

namespace holdwater::plan {
namespace {

using trip::Trip;

/// Where the plan lights the fire later than at the first moment and would not choose that by itself, the trip says it.
Lever said_start(units::LocalTime at) {
    Lever lever;
    lever.kind = Lever::Kind::start;
    lever.at_once = facts::facts().value("bend.start");
    lever.pull = [at](Trip& t, int) { t.light_fire = at; };
    lever.words = [](const Trip&, const Trip& after) {
        return fmt::format("light_fire = {} (the bath need not be held for longer)", after.light_fire->iso());
    };
    return lever;
}

std::optional<Mend> settled(const Trip& trip, const std::vector<Lever>& levers, const Steps& steps, Solver& solver,
                            Feasible& feasible) {
    const Trip changed = solver.changed_by(steps);
    const units::LocalTime start = feasible.start_of(changed);
    if (start == changed.light_fire.value_or(changed.from) || feasible.fully(changed)) {
        return solver.settled(steps);
    }
    std::vector<Lever> more{said_start(start)};
    more.insert(more.end(), levers.begin(), levers.end());
    Steps pulled{1};
    pulled.insert(pulled.end(), steps.begin(), steps.end());
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

std::optional<Mend> mend_of(const Trip& trip, Feasible& feasible) {
    const std::vector<Lever> levers = levers_of(trip);
    for (int round = 0; round < 2; ++round) {
        Solver solver(trip, levers, feasible);
        if (const auto steps = solver.found()) {
            if (auto mend = settled(trip, levers, *steps, solver, feasible)) {
                return mend;
            }
        }
        feasible.look_closer();
    }
    return std::nullopt;
}

}  // namespace holdwater::plan
