// SPDX-License-Identifier: MIT
// Whatever plan holds can be printed: trips drawn at random, in every format, on every sheet and in every language,
// each deck with its acts on Plan, its warnings once a card and no reference to a card that it has not. A few of them
// here; HOLDWATER_RANDOM_PLANS=200 in the environment asks for more, HOLDWATER_RANDOM_FROM for others.
#include "card/basis/basis.hpp"
#include "card/deck_checks.hpp"
#include "card/trip/deck.hpp"
#include "card/word_count.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "plan/advice/remedy.hpp"
#include "plan/result/boxes.hpp"
#include "support/faces.hpp"
#include "support/few_ways.hpp"
#include "support/printing.hpp"
#include "support/problems.hpp"
#include "support/random_trips.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <string>
#include <vector>

using namespace holdwater;

namespace {

int from_environment(const char* name, int otherwise) {
    const char* given = std::getenv(name);
    return given == nullptr ? otherwise : std::stoi(given);
}

words::Words words_of(const std::string& language) {
    const std::string path = std::string(HOLDWATER_SOURCE_DIR) + "/layouts/words/" + language + ".toml";
    return words::Words::read(support::file_text(path), path).value();
}

std::string first_fault(const problem::Problems& problems) {
    for (const problem::Problem& one : problems) {
        if (one.severity == problem::Severity::error) {
            return problem::to_line(one);
        }
    }
    return "";
}

/// What the decks of many trips ask of their readers, in one format.
struct Reading {
    std::map<std::size_t, int> faces;  // decks by how many
    int over_80 = 0;                   // faces
    int over_100 = 0;
    int all = 0;
    std::string fullest;
    std::size_t most = 0;
    std::string scraps;  // faces for which one turns a card in vain
};

/// A face after the first with a sentence or two and nothing else.
bool is_scrap(const layout::Page& face) {
    return support::words_on(face) < 16 &&
           std::all_of(face.groups.begin(), face.groups.end(), [](const layout::Group& group) {
               return group.tag == layout::Tag::title || group.tag == layout::Tag::paragraph;
           });
}

void count(const std::vector<layout::CardFaces>& deck, const std::string& whose, Reading& reading) {
    std::size_t faces = 0;
    for (const layout::CardFaces& card : deck) {
        for (std::size_t i = 0; i < card.faces.size(); ++i, ++faces) {
            const std::size_t words = support::words_on(card.faces[i]);
            ++reading.all;
            reading.over_80 += words > 80 ? 1 : 0;
            reading.over_100 += words > 100 ? 1 : 0;
            if (words > reading.most) {
                reading.most = words;
                reading.fullest = whose + " " + card.faces[i].name;
            }
            if (i > 0 && is_scrap(card.faces[i])) {
                reading.scraps += " " + whose + " " + card.faces[i].name;
            }
        }
    }
    ++reading.faces[faces];
}

using Readings = std::map<std::string, Reading>;

std::string told(const Reading& reading) {
    std::string faces;
    for (const auto& [count, decks] : reading.faces) {
        faces += " " + std::to_string(count) + ": " + std::to_string(decks);
    }
    return "decks by faces" + faces + "; of " + std::to_string(reading.all) + " faces over 80 words " +
           std::to_string(reading.over_80) + ", over 100 " + std::to_string(reading.over_100) + "; most " +
           std::to_string(reading.most) + " (" + reading.fullest + "); scraps" + reading.scraps;
}

/// What every deck keeps to; names that users give are no words of ours.
void check_rules(const card::Deck& deck, const plan::Plan& plan, const std::string& language) {
    CAPTURE(language);
    for (const card::Card& card : deck.cards) {
        support::check_warnings(card);
    }
    support::check_references(deck, language == "en" ? "card" : language == "es" ? "tarjeta" : "carte");
    if (language == "en") {
        support::check_acts(plan, deck);
    }
}

/// The first error of anything that is printed of a plan in one language; empty: none.
std::string printing_fault_in(const std::string& language, const trip::Trip& trip, const plan::Plan& plan,
                              std::uint64_t number, Readings& readings) {
    const words::Words words = words_of(language);
    const layout::Measure& by = support::real_measure();
    const card::Deck deck = card::trip_deck(plan, words, "TEST-TEST");
    check_rules(deck, plan, language);
    const std::vector<layout::Sheet> papers = {support::sheet("a4"), support::sheet("letter")};
    for (const char* name : {"hand", "pocket", "wallet", "large"}) {
        const layout::Format format = support::format(name);
        const auto faces = layout::lay_out(deck, format, by);
        if (!faces) {
            return std::string(name) + ": " + first_fault(faces.problems());
        }
        count(*faces, std::to_string(number) + " " + language, readings[name]);
        for (const layout::Sheet& paper : papers) {
            for (const layout::Sides sides : {layout::Sides::duplex, layout::Sides::single, layout::Sides::fold}) {
                const auto pages = layout::impose(*faces, format, paper, sides, 1, trip.name, by);
                if (!pages &&
                    !(sides == layout::Sides::fold && support::has_code(pages.problems(), "sheet-too-small"))) {
                    return std::string(name) + " on " + paper.name + ": " + first_fault(pages.problems());
                }
            }
        }
    }
    for (const layout::Sheet& paper : papers) {
        const card::Printing printing{"hand", 92.0, 124.0, paper.name, "duplex"};
        const auto basis = layout::lay_out_sheets(card::basis(trip, {plan}, {}, printing, words, "TEST-TEST"),
                                                  support::format("plain"), paper, by);
        if (!basis) {
            return "basis on " + paper.name + ": " + first_fault(basis.problems());
        }
    }
    return "";
}

/// The same in every language, whatever that of the trip.
std::string printing_fault(const trip::Trip& trip, const plan::Plan& plan, std::uint64_t number, Readings& readings) {
    for (const char* language : {"en", "es", "fr"}) {
        if (const std::string fault = printing_fault_in(language, trip, plan, number, readings); !fault.empty()) {
            return std::string(language) + ", " + fault;
        }
    }
    return "";
}

}  // namespace

TEST_CASE("every random trip file reads, and the same number gives the same trip") {
    for (std::uint64_t number = 1; number <= 300; ++number) {
        CAPTURE(number);
        CHECK_NOTHROW(support::random_trip(number));
    }
    CHECK(support::random_trip_text(7) == support::random_trip_text(7));
    CHECK(support::random_trip_text(7) != support::random_trip_text(8));
}

TEST_CASE("every plan of a random trip that holds is printed in every format on every sheet") {
    const int wanted = from_environment("HOLDWATER_RANDOM_PLANS", 15);
    const int from = from_environment("HOLDWATER_RANDOM_FROM", 1);
    plan::Effort cheap;
    cheap.search = {16, 1};
    cheap.promise = {64, 1};
    cheap.advise = false;
    cheap.diagnose = false;
    const facts::FactsInForce few_ways(support::facts_of_few_ways());
    Readings readings;
    int printed = 0;
    int tried = 0;
    std::map<std::string, int> refused;
    for (; printed < wanted && tried < 20 * wanted; ++tried) {
        const auto number = static_cast<std::uint64_t>(from + tried);
        CAPTURE(number);
        const trip::Trip trip = support::random_trip(number);
        const auto plan = plan::make_plan(trip, cheap);
        if (!plan) {
            ++refused[std::string(plan.problems().front().code.text())];
            continue;
        }
        ++printed;
        CHECK_MESSAGE(printing_fault(trip, *plan, number, readings) == "", support::random_trip_text(number));
    }
    std::string reasons;
    for (const auto& [code, count] : refused) {
        reasons += " " + code + " " + std::to_string(count);
    }
    MESSAGE(printed << " plans of " << tried << " trips printed; refused:" << reasons);
    for (const char* name : {"hand", "pocket", "large"}) {
        MESSAGE(std::string(name) << ": " << told(readings[name]));
        CHECK(readings[name].scraps == "");
    }
    CHECK(printed == wanted);
}
