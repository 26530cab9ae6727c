// SPDX-License-Identifier: MIT
// How it reads, and the JSON beside it.
#include "card/figures/rounding.hpp"
#include "cli/json/provisions_json.hpp"
#include "cli/text/plan_text.hpp"
#include "cli/text/provisions_text.hpp"
#include "cli/text/wrap.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/result/plan.hpp"
#include "support/efforts.hpp"
#include "support/finding.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <sstream>

using namespace holdwater;
using support::has;

namespace {

/// A trip and its plan, which points to it.
struct Worked {
    trip::Trip trip;
    plan::Plan plan;

    Worked(const std::string& name, units::System units) : trip(support::demo_trip(name)) {
        trip.units = units;
        auto made = plan::make_plan(trip, support::effort_of({64, 1}, {256, 1}));
        REQUIRE(made.ok());
        plan = std::move(made).value();
    }
    Worked(const Worked&) = delete;
    Worked& operator=(const Worked&) = delete;
};

}  // namespace

TEST_CASE("the text says what to take and when to begin, in lines of the terminal") {
    for (const char* name : {"frosty-weekend", "paddling-day", "class-day"}) {
        const Worked w(name, units::System::both);
        const std::string text = cli::around_text(w.plan);
        CAPTURE(text);
        for (const char* part :
             {"Food for ", "Water to fetch: ", " for the bath: ", "Ice for the way and until the food goes in: ",
              "Side dishes", "Sear for the crust", "Leftovers: ", "reheat once"}) {
            CHECK(has(text, part));
        }
        CHECK(has(text, w.trip.sides.front().name));
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) {
            std::size_t columns = 0;
            for (const char c : line) {
                columns += (static_cast<unsigned char>(c) & 0xC0U) != 0x80U ? 1 : 0;
            }
            CHECK(columns <= cli::terminal_columns);
            CHECK_FALSE(line.empty());
        }
    }
}

TEST_CASE("one system of units only, where the trip asks for it") {
    const Worked metric("class-day", units::System::metric);
    const std::string text = cli::around_text(metric.plan);
    CHECK_FALSE(has(text, "\u00A0lb"));
    CHECK_FALSE(has(text, "\u00A0qt"));
    CHECK_FALSE(has(text, "\u00A0oz"));
    CHECK_FALSE(has(text, "°F"));
    const Worked us("class-day", units::System::us);
    const std::string other = cli::around_text(us.plan);
    CHECK_FALSE(has(other, "\u00A0kg"));
    CHECK_FALSE(has(other, "\u00A0L"));
    CHECK_FALSE(has(other, "°C"));
    CHECK(has(other, "\u00A0lb"));
}

TEST_CASE("nothing is said of what the trip does not have") {
    Worked w("class-day", units::System::both);
    w.plan.around.ice.reset();
    w.plan.around.fuel.reset();
    w.plan.around.sides = {};
    w.plan.around.sear.foods.clear();
    w.trip.journey.reset();
    const std::string text = cli::around_text(w.plan);
    CHECK_FALSE(has(text, "Ice"));
    CHECK_FALSE(has(text, "Side dishes"));
    CHECK_FALSE(has(text, "Sear"));
    CHECK(has(text, "Fuel: none to carry"));
    const cli::Json json = cli::around_json(w.plan.around);
    CHECK(json["fuel"].is_null());
    CHECK(json["ice"].is_null());
    CHECK(json["sides"].empty());
    CHECK(json["sear"]["take_out"].is_null());
}

TEST_CASE("JSON carries the numbers unrounded, with their units in the names") {
    const Worked w("frosty-weekend", units::System::both);
    const cli::Json json = cli::around_json(w.plan.around);
    CHECK(json["ice"]["drained_kg"]["high"].get<double>() == w.plan.around.ice->drained.high.si());
    CHECK(json["fuel"]["mass_kg"]["likely"].get<double>() == w.plan.around.fuel->mass.likely.si());
    CHECK(json["fuel"]["fuel"] == "wood");
    CHECK(support::near_abs(json["portions"]["each_g"]["likely"].get<double>(),
                            w.plan.around.portions.each.likely.si() * 1e3, 1e-9));
    CHECK(json["water"]["fetch_l"].get<double>() == units::in_litres(w.plan.around.water.fetch));
    CHECK(json["sides"][0]["begin"] == "2027-10-16T11:40:00");
    CHECK(json["leftovers"]["slices"].size() == 6);
    CHECK(json["leftovers"]["slices"][0]["medium"] == "slush");
    CHECK(json["sear"]["foods"][0]["name"] == "pork loin, boneless");
}

TEST_CASE("the floor is given as a reading, the thermometer's error on it, as the cards tell it") {
    for (const double error : {0.5, 1.0, 2.0}) {
        CAPTURE(error);
        trip::Trip trip = support::demo_trip("paddling-day");
        trip.units = units::System::both;
        trip.boxes[0].thermometer = units::kelvins(error);
        trip.foods[0].tolerance += units::kelvins(error);
        plan::Effort quick;
        quick.search = {64, 1};
        quick.promise = {256, 1};
        quick.advise = false;
        const auto plan = plan::make_plan(trip, quick);
        REQUIRE(plan.ok());
        const std::string text = cli::plan_text(*plan);
        CHECK(has(text, "bath never to read below " +
                            units::written(card::degrees(plan->levels.read_floor, trip.units, units::Toward::up)) +
                            ";"));
        CHECK(plan->levels.read_floor.celsius() >= plan->levels.floor.celsius() + error - 1e-9);
    }
}
