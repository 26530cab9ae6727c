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

TEST_CASE("the hold ruler measures true in the page items: 20 mm to 80 mm is 60 mm") {
    // Ticks do not move with the times that they are given.
    plan::Effort quick;
    quick.search = {64, 1};
    quick.promise = {256, 1};
    quick.advise = false;
    const trip::Trip trip = demo_trip("frosty-weekend");
    const auto plan = plan::make_plan(trip, quick);
    REQUIRE(plan.ok());
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    const card::Deck deck = card::trip_deck(*plan, *words, "TEST-TEST", {"hold"});
    const auto format = layout::read_format(source_text("layouts/formats/hand.toml"), "hand.toml");
    REQUIRE(format.ok());
    const auto faces = layout::lay_out(deck, *format, real_measure());
    REQUIRE(faces.ok());
    // The ticks of one ruler lie on one line across; sorted along it they are 5 mm apart.
    std::vector<double> ticks;
    for (const layout::CardFaces& card : *faces) {
        for (const layout::Page& face : card.faces) {
            for (const layout::Item& item : face.items) {
                const auto* line = std::get_if<layout::PlacedLine>(&item);
                if (line != nullptr && line->role == layout::Role::ruler_tick && line->y1 == line->y2) {
                    ticks.push_back(line->y1.value());
                }
            }
        }
    }
    std::sort(ticks.begin(), ticks.end());
    REQUIRE(ticks.size() >= 17);
    bool found = false;
    for (const double from : ticks) {
        for (const double to : ticks) {
            found = found || std::abs((to - from) - 60.0) < 0.001;
        }
    }
    CHECK(found);
    for (std::size_t i = 1; i < ticks.size(); ++i) {
        const double gap = ticks[i] - ticks[i - 1];
        CHECK(std::abs(gap / 5.0 - std::round(gap / 5.0)) < 0.001);
    }
}

TEST_CASE("every card of a deck carries a caution, and the stamp is on the paper") {
    const trip::Trip trip = demo_trip("class-day");
    const auto plan = plan::make_plan(trip, without_advice());
    REQUIRE(plan.ok());
    const auto words = words::Words::read(source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(words.ok());
    const card::Deck deck = card::trip_deck(*plan, *words, "TEST-TEST");
    CHECK(deck.cards.size() == card::trip_cards().size());
    for (const card::Card& card : deck.cards) {
        CHECK_FALSE(card.cautions.empty());
        CHECK_FALSE(card.question.empty());
    }
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
