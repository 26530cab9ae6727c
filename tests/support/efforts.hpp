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

/// To the letter of the trip: the fire is lit at its first moment, and no other way is looked for.
inline plan::Effort to_the_letter() {
    plan::Effort effort;
    effort.choose = false;
    effort.ways = false;
    return effort;
}

/// The same, with neither advice nor answers to what-if questions, nor what only cards print.
inline plan::Effort effort_of(plan::Draw search, plan::Draw promise) {
    plan::Effort effort = to_the_letter();
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

/// The same, with the answers to the trip's questions, but without looking for advice.
inline plan::Effort without_advice() {
    plan::Effort effort = to_the_letter();
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
