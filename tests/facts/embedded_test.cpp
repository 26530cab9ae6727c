// SPDX-License-Identifier: MIT
// The facts that are compiled in: all are read, and what the rest of the program asks for by name is there.
#include "facts/read_facts.hpp"
#include "support/near.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <stdexcept>
#include <string>

using namespace holdwater;
using namespace holdwater::facts;

TEST_CASE("every compiled-in entry is read without a fault") {
    const problem::Result<Facts> read = read_facts(embedded_documents());
    for (const problem::Problem& problem : read.problems()) {
        FAIL_CHECK(problem::to_line(problem));
    }
    REQUIRE(read.ok());
    CHECK(read->foods().size() >= 28);
    CHECK(read->rulesets().size() >= 4);
    CHECK(read->rules().size() == 7 * read->rulesets().size());
    CHECK(read->checksum() == facts::facts().checksum());
    CHECK(read->checksum().size() == 16);
}

TEST_CASE("the compiled-in texts are those of the source folder") {
    for (const Document& document : embedded_documents()) {
        INFO(document.name);
        std::ifstream file(std::string(HOLDWATER_SOURCE_DIR) + "/src/facts/" + std::string(document.name));
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        CHECK(text == document.text);
    }
}

TEST_CASE("a key that is not there is our own fault") {
    CHECK_THROWS_AS(facts::facts().value("no.such.figure"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().spread("no.such.spread"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().kill_standard("none"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().growth("none"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().source("none"), std::logic_error);
    CHECK(facts::facts().find_food("no such food") == nullptr);
    CHECK(facts::facts().find_rule(support::ruleset("us"), Category::egg) == nullptr);
}

TEST_CASE("typed figures mind their units") {
    CHECK(facts::facts().temperature("come-up.to") == units::celsius(54.4));
    CHECK(facts::facts().duration("come-up.refuse") == units::hours(6));
    CHECK(facts::facts().duration("at-risk.red-meat.hold") == units::minutes(3));
    CHECK(facts::facts().difference("done.below-target") == units::kelvins(1));
    CHECK_THROWS_AS(facts::facts().duration("come-up.to"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().temperature("come-up.warn"), std::logic_error);
    CHECK_THROWS_AS(facts::facts().difference("come-up.to"), std::logic_error);
}

TEST_CASE("every uncertain input of a plan has a spread") {
    for (const char* key : {"thickness", "thickness.least", "diffusivity", "film", "start", "box-loss", "outside",
                            "wind", "litres", "boil.cooling", "thermometer", "top-up.late", "lid.open", "unstirred"}) {
        INFO(key);
        const Spread& spread = facts::facts().spread(key);
        CHECK(spread.low < spread.high);
        CHECK_FALSE(spread.meaning.empty());
    }
}

TEST_CASE("what was only remembered or judged never loosens what was read") {
    // Figures from memory in the rules of the kitchen: each lies on the strict side of, or beside, a figure that was
    // read.
    const Facts& facts = facts::facts();
    CHECK(facts.temperature("finish.bivalve") > facts.temperature("finish.full"));
    for (const Rule& rule : facts.rules()) {
        INFO(to_name(rule.ruleset), " ", to_name(rule.category));
        if (rule.provenance == Provenance::memory) {
            CHECK(rule.category == Category::bivalve);
        }
    }
    for (const KillStandard& standard : facts.kill_standards()) {
        INFO(standard.key);
        CHECK((standard.provenance == Provenance::read || standard.provenance == Provenance::computed));
    }
}

TEST_CASE("provenance and category have words") {
    CHECK(to_text(Provenance::memory) == "from memory");
    for (const Name<Category>& name : names<Category>()) {
        CHECK_FALSE(to_text(name.value).empty());
        CHECK(from_name<Category>(name.text) == name.value);
    }
}
