// SPDX-License-Identifier: MIT
// How hard a plan is thought about in tests, which is not always all that a cook is given.
#pragma once

#include "plan/advice/remedy.hpp"
#include "plan/result/plan.hpp"
#include "support/trips.hpp"

#include <map>
#include <memory>
#include <string>

namespace holdwater::support {

/// Neither advice nor answers to what-if questions, nor what only cards print.
inline plan::Effort effort_of(plan::Draw search, plan::Draw promise) {
    plan::Effort effort;
    effort.search = search;
    effort.promise = promise;
    effort.advise = false;
    effort.what_ifs = false;
    effort.for_cards = false;
    return effort;
}

/// As many scenarios as any plan.
inline plan::Effort full_effort() {
    return effort_of(plan::Effort{}.search, plan::Effort{}.promise);
}

/// As any plan, with the answers to the trip's questions, but without looking for a later fire or for advice: that
/// takes twice as long as all the rest, and changes no number of the plan.
inline plan::Effort without_advice() {
    plan::Effort effort;
    effort.advise = false;
    return effort;
}

/// The same, without what only cards print.
inline plan::Effort without_tables() {
    plan::Effort effort = without_advice();
    effort.for_cards = false;
    return effort;
}

/// The plan of a demo trip, without what only cards print; made once in a test program.
inline const plan::Plan& demo_plan(const std::string& name) {
    struct Kept {
        trip::Trip trip;
        problem::Result<plan::Plan> plan;
        explicit Kept(const std::string& of) : trip(demo_trip(of)), plan(plan::make_plan(trip, without_tables())) {}
    };
    static std::map<std::string, std::unique_ptr<Kept>> kept;
    std::unique_ptr<Kept>& here = kept[name];
    if (!here) {
        here = std::make_unique<Kept>(name);
    }
    return here->plan.value();
}

}  // namespace holdwater::support
