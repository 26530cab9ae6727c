// SPDX-License-Identifier: MIT
// Whatever plan holds can be printed: trips drawn at random, in every format and on every sheet. A few of them here;
// HOLDWATER_RANDOM_PLANS=200 in the environment asks for more, HOLDWATER_RANDOM_FROM for others.
#include "card/basis/basis.hpp"
#include "card/trip/deck.hpp"
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

/// The first error of anything that is printed of a plan in one language; empty: none.
std::string printing_fault_in(const std::string& language, const trip::Trip& trip, const plan::Plan& plan) {
    const words::Words words = words_of(language);
    const layout::Measure& by = support::real_measure();
    const card::Deck deck = card::trip_deck(plan, words, "TEST-TEST");
    const std::vector<layout::Sheet> papers = {support::sheet("a4"), support::sheet("letter")};
    for (const char* name : {"hand", "pocket", "wallet", "large"}) {
        const layout::Format format = support::format(name);
        const auto faces = layout::lay_out(deck, format, by);
        if (!faces) {
            return std::string(name) + ": " + first_fault(faces.problems());
        }
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
std::string printing_fault(const trip::Trip& trip, const plan::Plan& plan) {
    for (const char* language : {"en", "es", "fr"}) {
        if (const std::string fault = printing_fault_in(language, trip, plan); !fault.empty()) {
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
        CHECK_MESSAGE(printing_fault(trip, *plan) == "", support::random_trip_text(number));
    }
    std::string reasons;
    for (const auto& [code, count] : refused) {
        reasons += " " + code + " " + std::to_string(count);
    }
    MESSAGE(printed << " plans of " << tried << " trips printed; refused:" << reasons);
    CHECK(printed == wanted);
}
