// SPDX-License-Identifier: MIT
// Every search is bounded by how much it looks at: the same each time, kept to, and said where it ends a search.
#include "plan/search/work.hpp"

#include "plan/advice/proof.hpp"
#include "plan/search/parallel.hpp"
#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;

namespace {

constexpr double endless = 1e18;

plan::Effort few_scenarios() {
    plan::Effort effort = support::effort_of({64, 1}, {128, 1});
    effort.choose = true;
    return effort;
}

/// What is looked at for a plan of the paddling day.
double looked_at() {
    const plan::WorkBound bound(endless);
    REQUIRE(plan::make_plan(support::demo_trip("paddling-day"), few_scenarios()).ok());
    CHECK_FALSE(bound.stopped());
    return bound.done();
}

bool stopped_early(const problem::Problem& one) {
    return one.code == "no-mend" && one.message.find("stopped at its bound") != std::string::npos;
}

}  // namespace

TEST_CASE("work: what is counted inside a bound counts for the one around it, and on all processors") {
    plan::WorkBound outer(1000.0);
    {
        const plan::WorkBound inner(100.0);
        plan::for_each_index(
            150, [](std::size_t) { plan::count_work(1); }, 1);
        CHECK(inner.done() == 150.0);
        CHECK(inner.reached());
        CHECK(plan::work_is_enough());
        CHECK_FALSE(outer.reached());
    }
    CHECK(outer.done() == 150.0);
    CHECK_FALSE(outer.reached());
    CHECK(outer.stopped());
    CHECK_FALSE(plan::work_is_enough());
}

TEST_CASE("work: the same for the same trip, whatever is kept from before") {
    const double first = looked_at();
    CHECK(first > 0.0);
    CHECK(looked_at() == first);
}

TEST_CASE("work: at its bound a search gives what it has, which holds in as many scenarios as any plan") {
    plan::Effort effort = support::full_effort();
    effort.choose = true;
    const plan::WorkBound bound(1.0);
    const auto plan = plan::make_plan(support::demo_trip("paddling-day"), effort);
    REQUIRE(plan.ok());
    CHECK(plan->promise.share >= 0.95);
    CHECK(plan->promise.scenarios >= 8192);
    CHECK(bound.stopped());
}

TEST_CASE("work: what stopped at its bound is no proof that nothing helps, and says so") {
    trip::Trip trip = support::demo_trip("paddling-day");
    trip.serve = trip.from.after(units::minutes(50));
    const plan::WorkBound bound(1.0);
    CHECK_FALSE(stopped_early(plan::proof_of_none(trip)));
    REQUIRE(bound.reached());
    CHECK(stopped_early(plan::proof_of_none(trip)));
}
