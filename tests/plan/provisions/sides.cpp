// SPDX-License-Identifier: MIT
// Side dishes: their clock, and pots wanted twice at once.
#include "plan/provisions/sides.hpp"

#include "made_up.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using support::noon;
using support::simple_plan;

namespace {

int count(const problem::Problems& problems, problem::Code code) {
    for (const problem::Problem& p : problems) {
        CHECK(p.severity == problem::Severity::warning);
        CHECK_FALSE(p.hint.empty());
    }
    return support::count_code(problems, code);
}

}  // namespace

TEST_CASE("sides are listed by the clock and end at serving") {
    trip::Trip trip = support::afternoon();
    trip.sides = {{"rice", units::minutes(30)}, {"beans", units::minutes(120)}, {"roots", units::minutes(45)}};
    trip.fire.pots = 5;
    const plan::Plan plan = simple_plan(trip, 5.0, 100);
    const plan::Sides sides = plan::sides_of(plan);
    REQUIRE(sides.list.size() == 3);
    CHECK(sides.list[0].name == "beans");
    CHECK(sides.list[1].name == "roots");
    CHECK(sides.list[2].name == "rice");
    for (const plan::SideStart& side : sides.list) {
        CHECK(side.begin.after(side.takes) == trip.serve);
    }
    CHECK(sides.notes.empty());
    // Whoever eats first has them too.
    trip.earlier_sittings = {units::minutes(45)};
    const plan::Plan sittings = simple_plan(trip, 5.0, 100);
    for (const plan::SideStart& side : plan::sides_of(sittings).list) {
        CHECK(side.begin.after(side.takes) == trip.serve.after(-units::minutes(45)));
    }
}

TEST_CASE("a clash needs an overlap and too few pots; each alone is none") {
    trip::Trip trip = support::afternoon();        // two pots of 6.4 L usable
    trip.sides = {{"beans", units::minutes(60)}};  // from minute 300
    struct Row {
        double litres;  // of the top-up at its most
        int at;         // minute of pouring; the fire for it is lit 20 minutes before
        int pots;
        bool clash;
    };
    for (const Row& row :
         {Row{12, 330, 2, true}, Row{12, 301, 2, true}, Row{12, 300, 2, false}, Row{12, 200, 2, false},
          Row{6, 330, 2, false}, Row{6, 330, 1, true}, Row{12, 330, 3, false}, Row{12, 360, 2, true}}) {
        CAPTURE(row.litres);
        CAPTURE(row.at);
        CAPTURE(row.pots);
        trip.fire.pots = row.pots;
        const plan::Plan plan = simple_plan(trip, row.litres, row.at);
        const plan::Sides sides = plan::sides_of(plan);
        CHECK(sides.clashes.size() == (row.clash ? 1 : 0));
        CHECK(count(sides.notes, "side-clash") == (row.clash ? 1 : 0));
        if (row.clash) {
            CHECK(sides.clashes.front().until == noon(row.at));
            CHECK(sides.clashes.front().needed == row.pots + 1);
            CHECK(sides.clashes.front().there == row.pots);
            CHECK(sides.clashes.front().sides == std::vector<std::string>{"beans"});
            CHECK(sides.notes.front().message.find("beans") != std::string::npos);
        }
    }
}

TEST_CASE("a long side dish clashes with the fill as well") {
    trip::Trip trip = support::afternoon();
    trip.sides = {{"stew", units::minutes(350)}};
    const plan::Plan plan = simple_plan(trip, 5.0, 200);
    const plan::Sides sides = plan::sides_of(plan);
    REQUIRE(sides.clashes.size() == 1);
    CHECK(sides.clashes.front().from == noon());
    CHECK(sides.clashes.front().until == noon(20));
}

TEST_CASE("more sides than pots, and a side that begins before there is a fire, are named") {
    trip::Trip trip = support::afternoon();
    trip.sides = {{"a", units::minutes(10)}, {"b", units::minutes(10)}, {"c", units::minutes(10)}};
    plan::Plan plan = simple_plan(trip, 5.0, 200);
    CHECK(count(plan::sides_of(plan).notes, "too-many-sides") == 1);
    trip.sides = {{"beans", units::minutes(361)}};
    CHECK(count(plan::sides_of(plan).notes, "side-before-fire") == 1);
    trip.sides = {{"beans", units::minutes(359)}};
    CHECK(count(plan::sides_of(plan).notes, "side-before-fire") == 0);
    trip.sides.clear();
    CHECK(plan::sides_of(plan).notes.empty());
    CHECK(plan::sides_of(plan).list.empty());
}
