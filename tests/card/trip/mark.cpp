// SPDX-License-Identifier: MIT
// A mark that the pots do not give is said to be one. What Reading, Night and Hold say beside Plan.
#include "card/figures/places.hpp"
#include "card/texts.hpp"
#include "card/trip/deck.hpp"
#include "plan/result/hold_table.hpp"
#include "plan/result/overnight.hpp"
#include "plan/result/ready_condition.hpp"
#include "support/finding.hpp"
#include "support/trips.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;

namespace {

bool says(const plan::Plan& plan, const char* language, const char* key, const std::string& text) {
    const std::string name = std::string(language) + ".toml";
    const auto words = words::Words::read(source_text("layouts/words/" + name), name);
    REQUIRE(words.ok());
    const card::Deck deck = card::trip_deck(plan, *words, "TEST-TEST");
    const auto card =
        std::find_if(deck.cards.begin(), deck.cards.end(), [&](const card::Card& c) { return c.key == key; });
    REQUIRE(card != deck.cards.end());
    return has(joined(texts_of(*card)), text);
}

}  // namespace

TEST_CASE("where the pots may not give the mark, Reading and Night say to go by the reading, else not") {
    const Dealt demo("tests/plan/trips/frosty-weekend.toml");
    REQUIRE_FALSE(demo.plan.mark_out_of_reach);
    plan::Plan out_of_reach = demo.plan;  // hardly any trip that holds is one
    out_of_reach.mark_out_of_reach = true;
    for (const auto& [language, text] :
         {std::pair{"en", "go by the reading"}, std::pair{"es", "guiarse por la lectura"},
          std::pair{"fr", "suivre la lecture"}}) {
        CAPTURE(language);
        for (const char* key : {"reading", "night"}) {
            CAPTURE(key);
            CHECK(says(out_of_reach, language, key, text));
            CHECK_FALSE(says(demo.plan, language, key, text));
        }
    }
}

TEST_CASE("over a night, who is sent from the settled look to the next of Plan may leave it as long by Night") {
    int sent = 0;
    for (const char* path : {"layouts/trips/hut-night.toml", "tests/plan/trips/frosty-weekend.toml"}) {
        CAPTURE(path);
        const Dealt dealt(path);
        const plan::Plan& plan = dealt.plan;
        REQUIRE(plan::overnight(plan));
        const auto reads = card::settled_reads(plan);
        if (!reads) {
            continue;
        }
        ++sent;
        const units::LocalTime next = plan.top_ups.empty() ? plan.trip->serve : plan.top_ups.front().light_fire;
        const auto row = std::find_if(plan.night.unattended.begin(), plan.night.unattended.end(),
                                      [&](const plan::Unattended& one) { return one.reading <= *reads; });
        REQUIRE(row != plan.night.unattended.end());
        CHECK(row->longest >= next.since(plan::settled_at(plan)));
    }
    CHECK(sent >= 1);
}

TEST_CASE("no two rows of Hold read the same in inches") {
    trip::Trip trip = trip_at("layouts/trips/class-day.toml");
    for (const double mm : {27.0, 48.0, 49.0, 51.0, 64.0}) {
        CAPTURE(mm);
        trip.foods.front().thickness = units::millimetres(mm);
        plan::FoodPlan food = Dealt("layouts/trips/class-day.toml").plan.foods.front();
        food.food = &trip.foods.front();
        const Dealt dealt("layouts/trips/class-day.toml");
        plan::work_out_hold(dealt.plan, food);
        for (std::size_t i = 1; i < food.hold.thicknesses.size(); ++i) {
            const units::Length apart = food.hold.thicknesses[i] - food.hold.thicknesses[i - 1];
            CHECK(apart >= units::millimetres(25.4 / 8.0));
        }
    }
}
