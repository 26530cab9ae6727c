// SPDX-License-Identifier: MIT
// Names that users give: printed as they stand, and on every card however long they may be.
#include "card/basis/basis.hpp"
#include "card/texts.hpp"
#include "layout/layout.hpp"
#include "layout/text/name_fault.hpp"
#include "support/faces.hpp"
#include "support/trips.hpp"
#include "support/typeface.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

namespace {

/// Every name of a trip becomes this, with a figure behind it where they must differ.
void rename_all(trip::Trip& trip, const std::string& name) {
    trip.name = name;
    for (std::size_t i = 0; i < trip.foods.size(); ++i) {
        trip.foods[i].name = name;
    }
    for (trip::Side& side : trip.sides) {
        side.name = name;
    }
    for (trip::WhatIf& what : trip.what_ifs) {
        what.name = name;
    }
}

std::vector<layout::Page> basis_pages(const Dealt& dealt, const std::string& paper) {
    const std::string path = std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/en.toml";
    const words::Words words = words::Words::read(file_text(path), path).value();
    const card::Printing printing{"hand", 92.0, 124.0, paper, "duplex"};
    const auto pages = layout::lay_out_sheets(card::basis(dealt.trip, {dealt.plan}, {}, printing, words, "TEST-TEST"),
                                              format("plain"), sheet(paper), real_measure());
    REQUIRE_MESSAGE(pages.ok(), problem::to_line(pages.problems().front()));
    return *pages;
}

/// All that is written on a page, without spaces.
std::string written(const layout::Page& page) {
    std::string all;
    for (const layout::PlacedText& text : texts(page)) {
        all += text.text;
    }
    std::erase(all, ' ');
    return all;
}

/// The word again and again, as often as a name may have it and never over 60 letters.
std::string as_long_as_may_be(const std::string& word) {
    std::string name;
    while (name.size() + word.size() <= 60 && !layout::name_fault(name + word, real_measure())) {
        name += word;
    }
    return name;
}

}  // namespace

TEST_CASE("asterisks and backslashes of a user's names print as they stand, and make nothing bold") {
    trip::Trip trip = trip_at("layouts/trips/class-day.toml");
    const std::string name = "*Trout* 2 \\ *a*";
    rename_all(trip, name);
    const Dealt dealt(trip);
    const std::string squeezed_name = "*Trout*2\\*a*";
    const auto faces = layout::lay_out(dealt.deck, format("hand"), real_measure());
    REQUIRE(faces.ok());
    std::vector<layout::Page> pages = basis_pages(dealt, "a4");
    for (const layout::CardFaces& card : *faces) {
        pages.insert(pages.end(), card.faces.begin(), card.faces.end());
    }
    int found = 0;
    for (const layout::Page& page : pages) {
        CAPTURE(page.name);
        std::string all = written(page);
        for (std::size_t at = all.find(squeezed_name); at != std::string::npos; at = all.find(squeezed_name)) {
            all.erase(at, squeezed_name.size());
            ++found;
        }
        CHECK(all.find('\\') == std::string::npos);
        CHECK(all.find("Trout") == std::string::npos);
        for (const layout::Group& group : page.groups) {
            CHECK(group.alt.find("\\*") == std::string::npos);
        }
    }
    CHECK(found > static_cast<int>(faces->size()));  // at the foot of every face, and where the food is spoken of
}

TEST_CASE("the longest names that are taken stand on the cards of every format and on the basis sheets") {
    const std::vector<std::string> names = {as_long_as_may_be("W"),         as_long_as_may_be("i"),
                                            as_long_as_may_be("WWWWWWWW "), as_long_as_may_be("Kesselfleisch "),
                                            as_long_as_may_be("m-"),        as_long_as_may_be("mmm-")};
    CHECK(names[0].size() >= 10);
    CHECK(names[1].size() >= 30);
    for (const char* path : {"layouts/trips/class-day.toml", "tests/card/trips/minced-two-foods.toml",
                             "tests/plan/trips/two-meals.toml"}) {
        CAPTURE(path);
        for (const std::string& name : names) {
            CAPTURE(name);
            trip::Trip trip = trip_at(path);
            rename_all(trip, name);
            Dealt dealt(trip);
            for (const char* language : {"en", "es", "fr"}) {
                dealt.deal(dealt.trip.units, language);
                for (const char* one : {"hand", "pocket", "wallet", "large"}) {
                    CAPTURE(one);
                    const auto faces = layout::lay_out(dealt.deck, format(one), real_measure());
                    CHECK_MESSAGE(faces.ok(), problem::to_line(faces.problems().front()));
                }
            }
            basis_pages(dealt, "a4");
            basis_pages(dealt, "letter");
        }
    }
}

TEST_CASE("a name is refused for what the typeface lacks, for a word too wide and for too many words") {
    const auto code = [](const std::string& name) {
        const auto fault = layout::name_fault(name, real_measure());
        return std::string(fault ? fault->code.text() : "");
    };
    CHECK(code("pork loin, boneless (no. 2)") == "");
    CHECK(code("Schweinebraten") == "");
    CHECK(code("lengua de ternera al pimentón, ñoquis") == "");
    CHECK(code("ham \u6c34") == "name-glyph");
    CHECK(code("水") == "name-glyph");
    CHECK(code(std::string(40, 'W')) == "name-word-wide");
    CHECK(code("WWWWWWWWW WWWWWWWWW WWWWWWWWW WWWWWWWWW WWWWWWWWW WWWWWWWWW") == "name-wide");
}
