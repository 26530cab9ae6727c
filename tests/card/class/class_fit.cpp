// SPDX-License-Identifier: MIT
// The class deck is careful, refuses what it must, and fits all working formats.
#include "card/class/class_deck.hpp"
#include "card/class/class_frames.hpp"
#include "card/class/class_sheets.hpp"
#include "card/texts.hpp"
#include "card/word_count.hpp"
#include "support/faces.hpp"
#include "support/few_ways.hpp"
#include "support/finding.hpp"
#include "support/printed.hpp"
#include "support/printing.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <initializer_list>
#include <regex>
#include <variant>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("a class card names others by number and name, warns once at the act, and has one name for one thing") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST");
        CHECK(deck.footer == english().text("deck.footer"));
        int references = 0;
        for (const card::Card& card : deck.cards) {
            CAPTURE(card.key);
            CHECK(card.cautions.empty());  // those stand on every face
            int warnings = 0;
            for (const card::Block& block : card.blocks) {
                warnings += int{std::holds_alternative<card::Caution>(block)};
            }
            CHECK(warnings == 1);
            for (const std::string& raw : texts_of(card)) {
                const std::string text = as_read(raw);
                CAPTURE(text);
                static const std::regex named(R"(\bcard (\d+), ([A-Z][a-z]+))");
                for (std::sregex_iterator it(text.begin(), text.end(), named); it != std::sregex_iterator{}; ++it) {
                    const auto number = static_cast<std::size_t>(std::stoi((*it)[1]));
                    REQUIRE(number <= deck.cards.size());
                    CHECK(deck.cards[number - 1].name.starts_with((*it)[2].str()));
                    ++references;
                }
                CHECK_FALSE(std::regex_search(text, std::regex(R"(\b[Cc]ard [A-Z])")));
                CHECK_FALSE(std::regex_search(text, other_names()));
            }
        }
        CHECK(references >= 3);
        for (std::size_t f = 0; f < frame->plan().foods.size(); ++f) {
            const std::string text = joined(texts_of(deck.cards[f]));
            CHECK(has(text, "Never minced, rolled, stuffed or tenderised."));
            CHECK(has(text, "under 5, 65 or over, pregnant, weak immune system"));
        }
    }
}

TEST_CASE(
    "a class deck has fourteen hand faces at most, none over 80 words and numbers, sentences of ten words at most") {
    const facts::FactsInForce few_ways(facts_of_few_ways());
    for (const facts::Ruleset rules : rulesets()) {
        const auto frame = frame_of(wish(rules));
        const card::Deck deck = card::class_deck(*frame, english(), "TEST-TEST");
        const auto cards = layout::lay_out(deck, format("hand"), real_measure());
        REQUIRE(cards.ok());
        CAPTURE(facts::to_name(rules));
        std::size_t faces = 0;
        for (const layout::CardFaces& card : *cards) {
            CAPTURE(card.key);
            CHECK(card.faces.size() <= 2);
            for (const layout::Page& face : card.faces) {
                ++faces;
                CAPTURE(face.name);
                CHECK(words_on(face) <= 80);
            }
        }
        CHECK(faces <= 14);
        for (card::Card card : deck.cards) {
            std::vector<card::Block> said(card.blocks.begin(), card.blocks.end());
            // What a drawing shows is for those who hear the page.
            std::erase_if(said, [](const card::Block& one) { return std::holds_alternative<card::Drawings>(one); });
            card.blocks = card::Blocks(said);
            for (const std::string& raw : texts_of(card)) {
                static const std::regex ends(R"([.?!;:]+(\s+|$))");
                const std::string text = as_read(raw);
                std::sregex_token_iterator sentence(text.begin(), text.end(), ends, -1);
                for (; sentence != std::sregex_token_iterator{}; ++sentence) {
                    CAPTURE(sentence->str());
                    CHECK(words_in(*sentence) <= 11);  // "under 5, 65 or over, pregnant, weak immune system" is a list
                }
            }
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

namespace {

/// The scales of the loss finder stand on the page of its table.
void check_one_page_finder(const std::vector<layout::Page>& pages) {
    int found = 0;
    for (const layout::Page& page : pages) {
        const auto all = texts(page);
        const auto stands = [&](std::initializer_list<const char*> figures) {
            return std::any_of(all.begin(), all.end(), [&](const layout::PlacedText& text) {
                return std::find(figures.begin(), figures.end(), text.text) != figures.end();
            });
        };
        const bool scales = stands({"0.05", "0,05"});  // the foot of the losses
        const bool table = stands({"560"});            // the largest fall
        CHECK(scales == table);
        found += int{scales};
    }
    CHECK(found == 1);
}

}  // namespace

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
                    if (std::string(name) == "hand") {
                        std::size_t count = 0;
                        for (const layout::CardFaces& card : *faces) {
                            count += card.faces.size();
                        }
                        CHECK(count <= 14);
                    }
                    for (const char* paper : {"a4", "letter"}) {
                        CHECK(layout::impose(*faces, format(name), sheet(paper), layout::Sides::duplex, 1, "Class deck",
                                             real_measure())
                                  .ok());
                    }
                }
                const card::Sheets sheets = card::class_sheets(*frame, words, "TEST-TEST");
                for (const char* paper : {"a4", "letter"}) {
                    const auto laid = layout::lay_out_sheets(sheets, format("plain"), sheet(paper), real_measure());
                    CAPTURE(paper);
                    REQUIRE_MESSAGE(laid.ok(), (laid.ok() ? "" : laid.problems().front().message));
                    check_one_page_finder(*laid);
                }
            }
        }
    }
}
