// SPDX-License-Identifier: MIT
// One deck says one thing: of food that needs the fire, and of eaters at risk.
#include "card/texts.hpp"
#include "support/finding.hpp"
#include "support/trips.hpp"
#include "units/print.hpp"

#include <doctest/doctest.h>

#include <string>
#include <string_view>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string text_of(const Dealt& dealt, const char* key) {
    return joined(texts_of(dealt.card(key)));
}

/// With a plain space, as joined() gives texts.
std::string minutes_up(units::Duration d) {
    std::string text = units::print(d, units::Toward::up);
    const std::string_view tied = "\u00A0";
    for (std::size_t at = text.find(tied); at != std::string::npos; at = text.find(tied)) {
        text.replace(at, tied.size(), " ");
    }
    return text;
}

}  // namespace

TEST_CASE("food that needs the fire has its step, with time and how to tell, on Plan and Log") {
    Dealt dealt("tests/card/trips/stuffed-chicken.toml");
    dealt.deal(units::System::metric, "en");
    const plan::FoodPlan& food = dealt.plan.foods.front();
    REQUIRE(food.finishing.has_value());
    REQUIRE(food.leaves() < food.eaten);
    const std::string out = food.leaves().clock_24();
    const std::string takes = minutes_up(food.finishing->one.simmering);
    {
        const std::string text = text_of(dealt, "plan");
        INFO(text);
        CHECK(has(text, out));
        CHECK(has(text, food.finishing->light_fire.clock_24()));
        CHECK(has(text, takes));
        CHECK(has(text, "74 °C"));
    }
    CHECK(has(text_of(dealt, "plan"), "Ready only when each centre reads"));
    CHECK(has(text_of(dealt, "plan"), "pan "));  // flat and thin enough for one
    CHECK(has(text_of(dealt, "log"), out + " out"));
    CHECK(has(text_of(dealt, "one"), "Ready only when each centre reads"));
    // Which nobody can tell without a thermometer, however clear the wax is.
    CHECK(has(text_of(dealt, "touch"), "Food for the fire: not without a thermometer."));
    CHECK_FALSE(has(text_of(dealt, "touch"), "only with wax"));
}

TEST_CASE("held food is never called raw inside: cooked through it can be, and yet not safe") {
    for (const std::string& path : trip_paths()) {
        Dealt dealt(path);
        for (const char* language : {"en", "es", "fr"}) {
            dealt.deal(units::System::both, language);
            for (const card::Card& card : dealt.deck.cards) {
                const std::string text = joined(texts_of(card));
                INFO(path, " ", language, " ", card.key, "\n", text);
                CHECK_FALSE(has(text, "raw inside"));
                CHECK_FALSE(has(text, "crudo por dentro"));
                CHECK_FALSE(has(text, "cru au centre"));
            }
        }
    }
}

TEST_CASE("a plan for people at risk does not ask them for more than it gives, undisturbed") {
    Dealt dealt("tests/card/trips/at-risk-beef.toml");
    REQUIRE(dealt.trip.at_risk);
    struct Said {
        const char* language;
        const char* planned;
        const char* people;
        const char* none;
    };
    for (const Said& said :
         {Said{"en", "this plan is for them", "People at risk", "(card 1, Trip): none after a fall."},
          Said{"es", "el plan es para ellas", "Personas de riesgo", "nada tras bajar"},
          Said{"fr", "ce plan est pour eux", "À risque", "(carte 1, Sortie) : rien après une chute."}}) {
        CAPTURE(said.language);
        dealt.deal(units::System::metric, said.language);
        const std::string one = text_of(dealt, "one");
        const std::string reading = text_of(dealt, "reading");
        INFO(one);
        // Neither "always" nor a core of 74 °C in the line about them; what to do after a fall stands in the table.
        CHECK_FALSE(has(one, "74 °C"));
        CHECK(has(one, said.planned));
        CHECK(has(reading, "74 °C"));
        CHECK_FALSE(has(text_of(dealt, "plan"), said.people));
        CHECK_FALSE(has(reading, said.none));
    }
    Dealt others("layouts/trips/class-day.toml");
    others.deal(units::System::metric, "en");
    REQUIRE_FALSE(others.trip.at_risk);
    CHECK(has(text_of(others, "one"), "weak immune system): centre to 74 °C over the fire"));
    CHECK(has(text_of(others, "reading"), "(card 1, Trip): none after a fall."));
    CHECK(has(text_of(others, "plan"), "People at risk: card 1"));
    others.deal(units::System::metric, "fr");
    CHECK(has(text_of(others, "one"), "immunité affaiblie) : cœur à 74 °C au feu"));
    CHECK(has(text_of(others, "reading"), "(carte 1, Sortie) : rien après une chute."));
    CHECK(has(text_of(others, "plan"), "À risque : carte 1"));
}
