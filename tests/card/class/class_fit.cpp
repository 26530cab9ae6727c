// SPDX-License-Identifier: MIT
// The class deck is careful, refuses what it must, and fits all working formats.
#include "card/class/class_deck.hpp"
#include "card/class/class_frames.hpp"
#include "card/class/class_sheets.hpp"
#include "card/texts.hpp"
#include "support/few_ways.hpp"
#include "support/finding.hpp"
#include "support/printing.hpp"

#include <doctest/doctest.h>

#include <regex>
#include <set>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("no card of a class names a card that it does not have, and each hold card warns") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST");
        CHECK(deck.footer == english().text("deck.footer"));
        std::set<std::string> names;
        for (const card::Card& card : deck.cards) {
            names.insert(card.name);
            CHECK_FALSE(card.cautions.empty());
        }
        const std::string all = joined(texts_of(deck));
        static const std::regex named(R"(\b[Cc]ard ([A-Z][a-z-]+))");
        for (std::sregex_iterator it(all.begin(), all.end(), named); it != std::sregex_iterator{}; ++it) {
            CAPTURE(it->str());
            CHECK(names.contains((*it)[1]));
        }
        for (std::size_t b = 0; b < 3; ++b) {
            const std::string text = joined(texts_of(deck.cards[b]));
            CHECK(has(text, "Never minced, rolled, stuffed, tenderised."));
            CHECK(has(text, "under 5, 65 or over, pregnant, ill"));
        }
    }
}

TEST_CASE("a card has the same number and text alone as in the whole deck") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    const auto frame = frame_of(wish());
    const card::Deck whole = card::class_deck(*frame, english(), "TEST-TEST");
    std::size_t found = 0;
    for (const std::string& key : card::class_cards()) {
        CAPTURE(key);
        for (const card::Card& card : card::class_deck(*frame, english(), "TEST-TEST", {key}).cards) {
            REQUIRE(found < whole.cards.size());
            CHECK(card.key == key);
            CHECK(card.number == whole.cards[found].number);
            CHECK(texts_of(card) == texts_of(whole.cards[found]));
            ++found;
        }
    }
    CHECK(found == whole.cards.size());
}

TEST_CASE("what the bath alone does not make safe gets no class rulers") {
    for (const char* kind : {"venison", "beef-liver", "mussels"}) {
        if (facts::facts().find_food(kind) == nullptr) {
            continue;
        }
        CAPTURE(kind);
        const auto frame = card::ClassFrame::made(wish(support::ruleset("us"), kind), "Class deck");
        REQUIRE_FALSE(frame.ok());
        CHECK(has_code(frame.problems(), "class-kind"));
    }
    int refused = 0;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        using facts::Category;
        const bool whole = kind.category == Category::red_meat || kind.category == Category::poultry ||
                           kind.category == Category::farmed_game || kind.category == Category::fish;
        if (!whole) {
            ++refused;
            CAPTURE(kind.key);
            CHECK_FALSE(card::ClassFrame::made(wish(support::ruleset("us"), kind.key), "Class deck").ok());
        }
    }
    CHECK(refused >= 3);
    card::ClassWish block = wish();
    block.shapes = {facts::Shape::block};
    CHECK(has_code(card::ClassFrame::made(block, "Class deck").problems(), "class-shape"));
    card::ClassWish summit = wish();
    summit.altitude = units::metres(10900);
    CHECK(has_code(card::ClassFrame::made(summit, "Class deck").problems(), "class-altitude"));
}

TEST_CASE("the class deck fits hand, pocket and large, on A4 and Letter, in every system of units and every language") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    using units::System;
    std::vector<std::pair<System, std::string>> ways{
        {System::metric, "en"}, {System::us, "en"}, {System::both, "en"}, {System::us_first, "en"}};
    for (const std::string& language : other_languages()) {
        ways.emplace_back(System::both, language);
        ways.emplace_back(System::us_first, language);
    }
    for (const facts::Ruleset rules : {support::ruleset("us"), support::ruleset("uk"), support::ruleset("ca")}) {
        for (const char* kind : {"pork-loin", "chicken-breast"}) {
            const auto made = frame_of(wish(rules, kind));
            for (const auto& [system, language] : ways) {
                const words::Words words = words_of(language);
                const auto frame = made->printed_in(system, language);
                CAPTURE(card::canonical(frame->wish()));
                const card::Deck deck = card::class_deck(*frame, words, "TEST-TEST");
                for (const char* name : {"hand", "pocket", "large"}) {
                    CAPTURE(name);
                    const auto faces = layout::lay_out(deck, format(name), real_measure());
                    REQUIRE(faces.ok());
                    for (const char* paper : {"a4", "letter"}) {
                        CHECK(layout::impose(*faces, format(name), sheet(paper), layout::Sides::duplex, 1, "Class deck",
                                             real_measure())
                                  .ok());
                    }
                }
                const card::Sheets sheets = card::class_sheets(*frame, words, "TEST-TEST");
                for (const char* paper : {"a4", "letter"}) {
                    CHECK(layout::lay_out_sheets(sheets, format("plain"), sheet(paper), real_measure()).ok());
                }
            }
        }
    }
}
