// SPDX-License-Identifier: MIT
// A mark that the pots do not give is said to be one.
#include "card/texts.hpp"
#include "card/trip/deck.hpp"
#include "plan/advice/remedy.hpp"
#include "support/borrowed.hpp"
#include "support/few_ways.hpp"
#include "support/finding.hpp"
#include "support/random_trips.hpp"
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

TEST_CASE("where the pots may not give the mark, Top-up and Night say to go by the reading, else not") {
    // A random trip whose small pots give no mark that a plan could choose; it holds in few scenarios only.
    const trip::Trip trip = random_trip(242);
    const facts::FactsInForce few_ways(facts_of_few_ways());
    plan::Effort few;
    few.search = few.promise = {32, 1};
    few.advise = false;
    few.choose = false;
    const auto plan = plan::make_plan(borrowed(trip), few);
    REQUIRE(plan.ok());
    REQUIRE(plan->mark_out_of_reach);
    const Dealt demo("layouts/trips/trail-crew.toml");
    REQUIRE_FALSE(demo.plan.mark_out_of_reach);
    for (const auto& [language, text] :
         {std::pair{"en", "go by what it reads"}, std::pair{"es", "guiarse por lo que marca"}}) {
        CAPTURE(language);
        for (const char* key : {"topup", "night"}) {
            CAPTURE(key);
            CHECK(says(*plan, language, key, text));
            CHECK_FALSE(says(demo.plan, language, key, text));
        }
    }
}
