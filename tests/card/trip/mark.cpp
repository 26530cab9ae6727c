// SPDX-License-Identifier: MIT
// A mark that the pots do not give is said to be one.
#include "card/texts.hpp"
#include "card/trip/deck.hpp"
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
