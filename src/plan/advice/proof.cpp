// SPDX-License-Identifier: MIT
#include "plan/advice/proof.hpp"

#include "facts/facts.hpp"
#include "plan/advice/mend.hpp"
#include "plan/result/boxes.hpp"
#include "plan/search/work.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>

namespace holdwater::plan {
namespace {

using trip::Trip;

problem::Problems faults_of(const Trip& trip) {
    Effort effort;
    effort.advise = false;
    effort.what_ifs = false;
    effort.schedule_only = true;
    effort.for_cards = false;
    for (const Trip& part : one_trip_a_box(trip)) {
        const auto plan = plan_as_given(std::make_shared<const Trip>(part), effort);
        if (!plan) {
            return plan.problems();
        }
    }
    return {};
}

problem::Problem stopped_at_bound() {
    return problem::note("no-mend",
                         "the search for a change that makes this trip hold stopped at its bound before all were "
                         "tried; none that was tried does",
                         "fewer foods or fewer hours on one trip are sooner looked through; else change more: "
                         "thinner pieces, more time, a better box");
}

}  // namespace

problem::Problem proof_of_none(const Trip& trip) {
    if (work_is_enough()) {
        return stopped_at_bound();
    }
    const WorkBound own(facts::facts().value("search.most-work"));
    Feasible feasible;
    std::vector<Lever> levers = levers_of(trip);
    const std::size_t count = levers.size();
    Solver solver(trip, std::move(levers), feasible);
    const problem::Problems faults = faults_of(solver.changed_by(solver.furthest()));
    const auto error = std::find_if(faults.begin(), faults.end(), [](const problem::Problem& one) {
        return one.severity == problem::Severity::error;
    });
    if (own.stopped()) {
        return stopped_at_bound();  // what was not looked through proves nothing
    }
    if (error == faults.end()) {
        return problem::note("no-mend", "no change that was found makes this trip hold for sure",
                             "change more: thinner pieces, more time, a better box");
    }
    return problem::note(
        "no-mend",
        fmt::format("no change within this equipment makes it hold: with all {} that there are, each as "
                    "far as it goes, still: {}",
                    count, error->message),
        error->hint);
}

}  // namespace holdwater::plan
