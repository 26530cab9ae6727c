// SPDX-License-Identifier: MIT
// Hot water for drinks and washing-up: its litres, pots and clock, and pots wanted twice at once.
#include "plan/provisions/hot_water.hpp"

#include "made_up.hpp"
#include "plan/provisions/fuel.hpp"
#include "support/near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <utility>

using namespace holdwater;
using support::near_abs;
using support::noon;
using support::simple_plan;

namespace {

trip::HotWater water_of(const char* name, double litres, std::optional<units::LocalTime> at = {}) {
    trip::HotWater water;
    water.name = name;
    water.volume = units::litres(litres);
    water.at = at;
    return water;
}

plan::Plan plan_with(trip::Trip trip, const trip::HotWater& water) {
    trip.hot_water = {water};
    plan::Plan plan = simple_plan(trip, 6.0, 100);
    plan.trip = std::make_shared<const trip::Trip>(std::move(trip));  // which outlives this
    plan.round = units::minutes(20);
    return plan;
}

}  // namespace

TEST_CASE("pots and rounds follow from the litres, and the last of it boils at its time") {
    const trip::Trip trip = support::afternoon();  // two pots of 6.4 L usable, serving 360 minutes after noon
    struct Row {
        double litres;
        int pots;
        int rounds;
    };
    for (const Row& row :
         {Row{2, 1, 1}, Row{6.4, 1, 1}, Row{6.5, 2, 1}, Row{12.8, 2, 1}, Row{13, 2, 2}, Row{30, 2, 3}}) {
        INFO(row.litres, " L");
        const plan::Plan plan = plan_with(trip, water_of("tea", row.litres));
        const plan::HotWaters waters = plan::hot_waters_of(plan);
        REQUIRE(waters.list.size() == 1);
        CHECK(waters.list[0].pots == row.pots);
        CHECK(waters.list[0].rounds == row.rounds);
        CHECK(waters.list[0].at == trip.serve);
        CHECK(waters.list[0].light_fire == trip.serve.after(-(units::minutes(20) * row.rounds)));
        CHECK(waters.notes.empty());
    }
}

TEST_CASE("it is boiled, fetched and paid for in fuel") {
    trip::Trip trip = support::afternoon();
    const plan::Plan without = simple_plan(trip, 6.0, 100);
    trip.people = 10;
    trip::HotWater each = water_of("tea", 0.5);
    each.per_person = true;
    trip.hot_water = {each, water_of("washing-up", 4.0, trip.serve.after(units::minutes(40)))};
    plan::Plan with = simple_plan(trip, 6.0, 100);
    with.round = units::minutes(20);
    const plan::HotWaters waters = plan::hot_waters_of(with);
    CHECK(near_abs(units::in_litres(waters.all), 9.0, 1e-9));
    CHECK(waters.list.back().name == "washing-up");
    const plan::WaterNeed before = plan::water_of(without);
    const plan::WaterNeed after = plan::water_of(with, waters.all);
    CHECK(near_abs(units::in_litres(after.boil_likely - before.boil_likely), 9.0, 1e-9));
    CHECK(near_abs(units::in_litres(after.boil_most - before.boil_most), 9.0, 1e-9));
    CHECK(near_abs(units::in_litres(after.fetch - before.fetch), 9.0, 1e-9));
    CHECK(plan::fuel_of(with, after)->card > plan::fuel_of(without, before)->card);
}

TEST_CASE("the bath goes first: where pots are short it is said") {
    trip::Trip trip = support::afternoon();
    struct Row {
        double litres;
        int at;  // minutes after noon
        bool clash;
    };
    // The fill boils in both pots until 20, a top-up of one pot from 80 to 100.
    for (const Row& row :
         {Row{2, 10, true}, Row{2, 60, false}, Row{2, 100, false}, Row{12, 100, true}, Row{12, 140, false}}) {
        INFO(row.litres, " L at ", row.at);
        const plan::HotWaters waters = plan::hot_waters_of(plan_with(trip, water_of("tea", row.litres, noon(row.at))));
        CHECK(support::count_code(waters.notes, "hot-water-clash") == (row.clash ? 1 : 0));
    }
    // Side dishes have their pots too.
    trip.sides = {{"rice", units::minutes(30)}};
    CHECK(plan::hot_waters_of(plan_with(trip, water_of("tea", 2))).notes.empty());
    CHECK_FALSE(plan::hot_waters_of(plan_with(trip, water_of("tea", 12))).notes.empty());
}
