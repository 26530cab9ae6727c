// SPDX-License-Identifier: MIT
// The printed decks of the demo trips in both working formats and on both sheets.
#include "card/trip/deck.hpp"
#include "cli/trail_crew_cards.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "plan/result/plan.hpp"
#include "support/efforts.hpp"
#include "support/typeface.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <variant>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("every demo deck prints in hand and pocket on A4 and Letter, twice the same bytes, valid and readable") {
    for (const char* trip : {"trail-crew", "hut-night", "paddling-day", "class-day"}) {
        for (const char* format : {"hand", "pocket"}) {
            for (const char* sheet : {"a4", "letter"}) {
                // What is written depends on format and sheet in the same way for every trip, so the one with a night,
                // which takes ten times as long to plan, is printed in each format and on each sheet once.
                const bool short_trip = std::string(trip) != "trail-crew";
                const bool twice = std::string(format) == "pocket" && std::string(sheet) == "letter";
                if (!short_trip && !twice && (std::string(format) != "hand" || std::string(sheet) != "a4")) {
                    continue;
                }
                CAPTURE(trip);
                CAPTURE(format);
                CAPTURE(sheet);
                const bool pictured = !short_trip && !twice;
                const auto folder = pictured ? trail_crew_cards().folder
                                             : fresh_folder(std::string("deck-") + trip + "-" + format + "-" + sheet);
                const std::string arguments = "cards " + demo_path(trip) + " --format " + format + " --sheet " + sheet +
                                              " --out '" + folder.string() + "'";
                const Said said = pictured ? trail_crew_cards().said : holdwater_says(arguments, folder);
                CAPTURE(said.err);
                REQUIRE(good(said.exit));
                const std::string pdf = (folder / (std::string(trip) + "-cards.pdf")).string();
                const std::string first = file_text(pdf);
                if (short_trip || twice) {
                    REQUIRE(good(holdwater_says(arguments, folder).exit));
                    CHECK(first == file_text(pdf));
                }
                CHECK(first.size() < 125000);  // 120 kB before the Log had two boxes a top-up
                CHECK(std::system(("qpdf --check '" + pdf + "' >/dev/null 2>&1").c_str()) == 0);
                const std::string text = (folder / "text.txt").string();
                REQUIRE(std::system(("pdftotext -layout '" + pdf + "' '" + text + "'").c_str()) == 0);
                CHECK(file_text(text).find("How long for this thickness?") != std::string::npos);
                CHECK(file_text(text).find("WARNING") != std::string::npos);
            }
        }
    }
}

TEST_CASE("the thickness steps measure true in the page items, in every format") {
    // Steps do not move with the times that they are given.
    plan::Effort quick;
    quick.search = {64, 1};
    quick.promise = {256, 1};
    quick.advise = quick.ways = false;
    const trip::Trip trip = demo_trip("paddling-day");
    const auto plan = plan::make_plan(trip, quick);
    REQUIRE(plan.ok());
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    const card::Deck deck = card::trip_deck(*plan, *words, "TEST-TEST", {"hold"});
    std::vector<double> asked;
    for (const card::Block& block : deck.cards.front().blocks) {
        if (const auto* const stairs = std::get_if<card::Staircase>(&block)) {
            std::copy_if(stairs->bars.begin(), stairs->bars.end(), std::back_inserter(asked),
                         [](double mm) { return mm > 0.0; });
        }
    }
    REQUIRE(asked.size() >= 2);
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(std::string(name));
        const std::string path = std::string("layouts/formats/") + name + ".toml";
        const auto format = layout::read_format(source_text(path), path);
        REQUIRE(format.ok());
        const auto faces = layout::lay_out(deck, *format, real_measure());
        REQUIRE(faces.ok());
        // Whether they stand or lie, one side of each bar is its thickness.
        std::size_t true_bars = 0;
        for (const layout::CardFaces& card : *faces) {
            for (const layout::Page& face : card.faces) {
                for (const layout::Item& item : face.items) {
                    const auto* const bar = std::get_if<layout::PlacedBox>(&item);
                    if (bar == nullptr || bar->role != layout::Role::ruler_tick) {
                        continue;
                    }
                    const double stroke = bar->stroke_pt.value() * 25.4 / 72.0;  // half of it lies outside on each side
                    const bool is_true = std::any_of(asked.begin(), asked.end(), [&](double mm) {
                        return std::abs(bar->width.value() + stroke - mm) < 0.001 ||
                               std::abs(bar->height.value() + stroke - mm) < 0.001;
                    });
                    CHECK(is_true);
                    true_bars += is_true ? 1 : 0;
                }
            }
        }
        CHECK(true_bars >= 2);
    }
}

TEST_CASE("every card of a deck that can hurt somebody carries a caution, and the stamp is on the paper") {
    const trip::Trip trip = demo_trip("hut-night");
    const auto plan = plan::make_plan(trip, without_advice());
    REQUIRE(plan.ok());
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    const card::Deck deck = card::trip_deck(*plan, *words, "TEST-TEST");
    CHECK(deck.cards.size() == card::trip_cards().size());
    std::set<std::string> harmless;
    for (const card::Card& card : deck.cards) {
        CAPTURE(card.key);
        const bool warned = std::any_of(card.blocks.begin(), card.blocks.end(), [](const card::Block& block) {
            return std::holds_alternative<card::Caution>(block);
        });
        CHECK((card.harmless || warned || !card.cautions.empty()));
        if (card.harmless) {
            harmless.insert(card.key);
        }
        CHECK_FALSE(card.question.empty());
    }
    // Plan and Log are read and written, not done; the others say in their own rows what is thrown away or cut, see
    // the rules of decks.
    CHECK(harmless == std::set<std::string>{"plan", "log", "reading", "hold", "trouble"});
}

TEST_CASE("a wording with a missing place or a broken file is reported with its line") {
    const auto broken = words::Words::read("[plan]\nname = 3\n", "xx.toml");
    REQUIRE_FALSE(broken.ok());
    CHECK(problem::to_line(broken.problems().front()).find("xx.toml:2:") == 0);
    const auto words = words::Words::read("[a]\nb = \"{x} L\"\n", "xx.toml");
    REQUIRE(words.ok());
    CHECK(words->text("a.b", {{"x", "3"}}) == "3 L");
    CHECK_THROWS(words->text("a.b"));
    CHECK_THROWS(words->text("a.c"));
}
