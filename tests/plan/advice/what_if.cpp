// SPDX-License-Identifier: MIT
// What-if questions: answered by working them through, and never milder for a harder question.
#include "plan/advice/what_if.hpp"

#include "support/efforts.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using units::hours;
using units::kelvins;

namespace {

trip::WhatIf colder(double by) {
    trip::WhatIf what;
    what.name = "colder";
    what.colder = kelvins(by);
    return what;
}

trip::WhatIf fire_out(double h) {
    trip::WhatIf what;
    what.name = "no fire";
    what.fire_out = hours(h);
    return what;
}

plan::Effort with_answers() {
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.what_ifs = true;
    return effort;
}

}  // namespace

TEST_CASE("each question is answered, in its order") {
    trip::Trip trip = support::demo_trip("trail-crew");
    trip::WhatIf late;
    late.name = "late";
    late.later = hours(3);
    trip.what_ifs = {colder(8), late, fire_out(3)};
    const auto plan = plan::make_plan(trip, with_answers());
    REQUIRE(plan.ok());
    REQUIRE(plan->what_ifs.size() == 3);
    CHECK(plan->what_ifs[0].what->name == "colder");
    CHECK(plan->what_ifs[1].what->name == "late");
    CHECK(plan->what_ifs[1].holds);
    CHECK(plan->what_ifs[1].top_ups >= plan->top_ups.size());
    CHECK(plan->what_ifs[0].top_ups >= plan->top_ups.size());
    CHECK(plan->what_ifs[0].longest <= plan->night.longest);
}

TEST_CASE("a longer time without fire, and a colder one, is never judged milder") {
    trip::Trip trip = support::demo_trip("trail-crew");
    for (const double h : {0.05, 1.0, 2.0, 3.0, 5.0, 8.0, 12.0}) {
        trip.what_ifs.push_back(fire_out(h));
    }
    const auto plan = plan::make_plan(trip, with_answers());
    REQUIRE(plan.ok());
    for (std::size_t i = 1; i < plan->what_ifs.size(); ++i) {
        CHECK(plan->what_ifs[i].below >= plan->what_ifs[i - 1].below);
        CHECK(plan->what_ifs[i].action >= plan->what_ifs[i - 1].action);
    }
    CHECK(plan->what_ifs.front().holds);  // a few minutes: the action line leaves that much
    CHECK(plan->what_ifs.back().action == safety::FallAction::throw_away);
    trip.what_ifs = {fire_out(2), fire_out(2)};
    trip.what_ifs[1].colder = kelvins(10);
    const auto cold = plan::make_plan(trip, with_answers());
    REQUIRE(cold.ok());
    CHECK(cold->what_ifs[1].below >= cold->what_ifs[0].below);
}

TEST_CASE("a cold that the fire cannot make good is said to break, with the limit") {
    trip::Trip trip = support::demo_trip("trail-crew");
    trip.what_ifs = {colder(200)};
    const auto plan = plan::make_plan(trip, with_answers());
    REQUIRE(plan.ok());
    CHECK_FALSE(plan->what_ifs[0].holds);
    CHECK_FALSE(plan->what_ifs[0].broken.empty());
}
