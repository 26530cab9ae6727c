// SPDX-License-Identifier: MIT
// One figure, one text: what the terminal prints is what the numbers of the cards say, to the last digit.
#include "card/figures/numbers.hpp"
#include "card/figures/rounding.hpp"
#include "cli/text/plan_text.hpp"
#include "cli/text/provisions_text.hpp"
#include "cli/text/what_if_text.hpp"
#include "facts/facts.hpp"
#include "plan/result/late_pour.hpp"
#include "plan/search/setup.hpp"
#include "support/borrowed.hpp"
#include "support/efforts.hpp"
#include "support/finding.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

using namespace holdwater;
using support::has;

namespace {

constexpr const char* trips[] = {
    "tests/plan/trips/frosty-weekend.toml",     "layouts/trips/paddling-day.toml",    "layouts/trips/class-day.toml",
    "tests/plan/trips/poor-box.toml",           "tests/card/trips/at-risk-beef.toml", "tests/card/trips/uk-pork.toml",
    "tests/card/trips/no-thermometer-beef.toml"};
constexpr units::System systems[] = {units::System::metric, units::System::us, units::System::both};

std::string plain(std::string text) {
    for (const char* const space : {"\u00A0", "\n"}) {
        for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space)) {
            text.replace(at, std::string(space).size(), " ");
        }
    }
    return text;
}

std::string number(const std::vector<card::CardNumber>& numbers, const std::string& name) {
    for (const card::CardNumber& one : numbers) {
        if (one.name == name) {
            return plain(one.printed);
        }
    }
    return "";
}

/// A plan of a trip in a system of units, which may change.
struct Made {
    trip::Trip trip;
    std::optional<plan::Plan> plan;
    Made(const char* path, units::System system) : trip(support::trip_at(path)) {
        trip.units = system;
        auto made = plan::make_plan(support::borrowed(trip), support::effort_of({64, 1}, {256, 1}));
        REQUIRE(made.ok());
        plan = std::move(made).value();
    }
};

}  // namespace

TEST_CASE("litres, floors, leave-it and kill are the same on the terminal and in the numbers of the cards") {
    for (const char* const path : trips) {
        Made made(path, units::System::metric);
        for (const units::System system : systems) {
            CAPTURE(path);
            CAPTURE(units::name_of(system));
            made.trip.units = system;  // the same plan, printed in other units
            const plan::Plan& plan = *made.plan;
            const card::SafeSide writer{plan, words::Words::model()};
            const auto numbers = card::card_numbers(writer);
            const std::string text = plain(cli::plan_text(plan)) + plain(cli::around_text(plan));
            CAPTURE(text);
            if (plan.fill.warming.si() == 0.0) {
                CHECK(has(text, "boil " + number(numbers, "boiled_l")));
                CHECK(has(text, number(numbers, "cold_l") + " of cold water into the box"));
            }
            for (std::size_t i = 1; i <= plan.top_ups.size(); ++i) {
                const std::string litres = number(numbers, fmt::format("top_up_{}_l", i));
                REQUIRE_FALSE(litres.empty());
                CHECK(has(text, writer.reads() ? "likely " + litres : litres + " boiling"));
            }
            CHECK(has(text, "Water to fetch: " + number(numbers, "fetch_l")));
            if (plan.around.ice && plan.around.ice->card.si() > 0.0) {
                CHECK(has(text, "Ice for the way and until the food goes in: " + number(numbers, "ice_kg")));
            }
            if (writer.reads()) {
                CHECK(has(text, "bath never to read below " + number(numbers, "read_floor_c") + ";"));
                CHECK(has(text, "at " + number(numbers, "action_line_c") + " or below"));
                CHECK(has(text, "after " + plain(writer.written(writer.at_least(plan.night.reading))) +
                                    " it may be left " + number(numbers, "longest_alone_h")));
            }
            for (const plan::FoodPlan& food : plan.foods) {
                CHECK(
                    has(text, "core peaks at " + number(numbers, "core_peak_c: " + food.food->name) + " at the most"));
                if (!food.standard.finish) {
                    CHECK(has(text, "kill " + number(numbers, "kill_margin: " + food.food->name) + " times"));
                }
            }
        }
    }
}

TEST_CASE("a published limit is printed on the terminal as its publisher pairs it") {
    const Made made("layouts/trips/paddling-day.toml", units::System::both);
    const std::string text = plain(cli::plan_text(*made.plan)) + plain(cli::around_text(*made.plan));
    CAPTURE(text);
    CHECK(has(text, "21 °C (70 °F) within 2 h of leaving the bath, 5 °C (41 °F) within 6 h in all"));
    CHECK(has(text, "reheat once, to 74 °C (165 °F)"));
    CHECK_FALSE(has(text, "(166 °F)"));
    CHECK_FALSE(has(text, "(69 °F)"));
}

TEST_CASE("leftovers keep and are heated again by the rules of the trip") {
    struct Row {
        const char* rules;
        const char* days;
        const char* reheat;
    };
    for (const Row& row :
         {Row{"us", "within 3 days", "74 °C (165 °F)"}, Row{"ca", "within 3 days", "74 °C (165 °F)"},
          Row{"uk", "within 2 days", "70 °C (158 °F) for 2 min"}, Row{"au-nz", "within 2 days", "75 °C (167 °F)"}}) {
        trip::Trip trip = support::demo_trip("frosty-weekend");
        trip.units = units::System::both;
        trip.rules = *facts::from_name<facts::Ruleset>(row.rules);
        trip.foods.front().target = units::celsius(72);
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        plan::Plan any;
        any.trip = support::borrowed(trip);
        any.levels.boiling = setup->levels.boiling;
        any.around = plan::provisions_of(*setup, any);
        const std::string text = plain(cli::around_text(any));
        CAPTURE(text);
        CHECK(has(text, row.days));
        CHECK(has(text, std::string("reheat once, to ") + row.reheat));
        CHECK(has(text, "never in closed bags"));
    }
}

TEST_CASE("without a thermometer a pour that is too late has its safe step on the terminal and in what-ifs") {
    trip::Trip trip = support::trip_at("tests/card/trips/no-thermometer-beef.toml");
    trip.serve = trip.serve.after(units::hours(9));
    for (const double hours : {0.5, 20.0}) {
        trip::WhatIf what;
        what.name = "rain";
        what.fire_out = units::hours(hours);
        trip.what_ifs.push_back(what);
    }
    plan::Effort effort = support::effort_of({64, 1}, {256, 1});
    effort.what_ifs = true;
    const auto plan = plan::make_plan(trip, effort);
    REQUIRE(plan.ok());
    REQUIRE(plan->late_pour.has_value());
    const card::SafeSide writer{*plan, words::Words::model()};
    const std::string boil = plain(writer.must_hold(plan->late_pour->boil));
    const std::string text = plain(cli::plan_text(*plan));
    CHECK(has(text, "at a hard boil for " + boil + ", eat it now"));
    CHECK_FALSE(has(text, "what was late is thrown away"));
    const std::string answers = plain(cli::what_if_text(*plan));
    CAPTURE(answers);
    CHECK(has(answers,
              "rain (no fire for 30 min): a pour may come so late that the food goes at once into a pot at a hard "
              "boil for " +
                  boil));
    CHECK(has(answers, "rain (no fire for 20 h): a pour may come so late that the food is thrown away"));
    CHECK(plan::late_step(*plan, units::minutes(30)) == plan::LateStep::none);
    CHECK(plan::late_step(*plan, units::minutes(31)) == plan::LateStep::boil_and_eat);
    CHECK(plan::late_step(*plan, plan->late_pour->until + units::minutes(1)) == plan::LateStep::throw_away);
}
