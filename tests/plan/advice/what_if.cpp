// SPDX-License-Identifier: MIT
// What-if questions: answered by working them through, and never milder for a harder question.
#include "plan/advice/what_if.hpp"

#include "facts/facts.hpp"
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
    trip::Trip trip = support::demo_trip("frosty-weekend");
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
    trip::Trip trip = support::demo_trip("frosty-weekend");
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

TEST_CASE("a colder day never lets a box be left longer than the planned one") {
    for (const char* name :
         {"layouts/trips/hut-night.toml", "tests/plan/trips/frosty-weekend.toml", "layouts/trips/paddling-day.toml"}) {
        CAPTURE(name);
        trip::Trip trip = support::trip_at(name);
        trip.what_ifs = {colder(2), colder(5), colder(10)};
        const auto plan = plan::make_plan(trip, with_answers());
        REQUIRE(plan.ok());
        for (const plan::WhatIfAnswer& answer : plan->what_ifs) {
            CHECK(answer.longest <= plan->night.longest);
            if (!plan->top_ups.empty()) {
                CHECK(answer.longest <= plan->interval_rough);
            }
        }
    }
}

TEST_CASE("a cold that the fire cannot make good is said to break, with the limit") {
    trip::Trip trip = support::demo_trip("frosty-weekend");
    trip.what_ifs = {colder(200)};
    const auto plan = plan::make_plan(trip, with_answers());
    REQUIRE(plan.ok());
    CHECK_FALSE(plan->what_ifs[0].holds);
    CHECK_FALSE(plan->what_ifs[0].broken.empty());
}

TEST_CASE("who eats is part of what Night and the what-ifs decide: at risk nothing is saved after two hours below") {
    trip::Trip trip = support::trip_at("tests/card/trips/at-risk-beef.toml");
    REQUIRE(trip.at_risk);
    trip.what_ifs.clear();
    for (const double h : {0.5, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0}) {
        trip.what_ifs.push_back(fire_out(h));
    }
    const auto plan = plan::make_plan(trip, with_answers());
    REQUIRE(plan.ok());
    const units::Duration at_risk = facts::facts().duration("fall.at-risk");
    const units::Duration others = facts::facts().duration("fall.eat-now");
    REQUIRE(at_risk < others);
    int told_apart = 0;  // falls that others could still eat after
    const auto look_at = [&](units::Duration below, safety::FallAction action) {
        if (below > at_risk) {
            CHECK(action == safety::FallAction::throw_away);
            told_apart += below <= others ? 1 : 0;
        }
    };
    for (const plan::MorningRow& row : plan->night.morning) {
        for (const plan::MorningRow::Cell& cell : row.cells) {
            look_at(cell.below, cell.action);
        }
    }
    CHECK(told_apart > 0);
    told_apart = 0;
    for (const plan::WhatIfAnswer& answer : plan->what_ifs) {
        look_at(answer.below, answer.action);
    }
    CHECK(told_apart > 0);
}
