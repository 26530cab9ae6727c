// SPDX-License-Identifier: MIT
// Word files: what is read, what is refused when it is read, and how places are filled.
#include "words/words.hpp"

#include "support/files.hpp"
#include "units/print.hpp"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

using namespace holdwater;
using words::Words;

namespace {

const std::string language = "[language]\ndecimal-mark = \",\"\nclock = \"24\"\nclock-us = \"12\"\nplural = \"one\"\n";

Words read(const std::string& text) {
    const auto words = Words::read(text, "xx.toml");
    REQUIRE(words.ok());
    return *words;
}

std::string lines_of(const problem::Problems& problems) {
    std::string lines;
    for (const problem::Problem& fault : problems) {
        lines += problem::to_line(fault) + "\n";
    }
    return lines;
}

bool has(const std::string& text, const std::string& what) {
    return text.find(what) != std::string::npos;
}

}  // namespace

TEST_CASE("places are filled by texts, by figures as the language writes them, and by counts that choose the form") {
    const Words words = read(language +
                             "[a]\npour = \"Pour {litres} for {name}.\"\n"
                             "pots = { one = \"1 pot of {litres}\", other = \"{count} pots of {litres}\" }\n");
    const units::Amount litres = units::amount(units::litres(2.5), units::System::both, {0.5, units::Toward::up});
    CHECK(words.text("a.pour", {{"litres", litres}, {"name", "Loin 2.5"}}) ==
          "Pour 2,5\u00A0L (3,0\u00A0qt) for Loin 2.5.");
    CHECK(words.text("a.pots", {{"count", 1}, {"litres", litres}}) == "1 pot of 2,5\u00A0L (3,0\u00A0qt)");
    CHECK(words.text("a.pots", {{"count", 3}, {"litres", "x"}}) == "3 pots of x");
    CHECK(words.written(units::decimal(0.25, 2)) == "0,25");
    CHECK(words.numerals(units::System::us).twelve_hours);
    CHECK_FALSE(words.numerals(units::System::both).twelve_hours);
    CHECK_THROWS_AS(static_cast<void>(words.text("a.pour", {{"litres", litres}})), std::logic_error);
    CHECK_THROWS_AS(static_cast<void>(words.text("a.none")), std::logic_error);
    CHECK_FALSE(words.find("a.none").has_value());
}

TEST_CASE("a text may hold the text of another key, and only of one that is there and has no places") {
    const Words words =
        read(language + "[limits]\nname = \"Limits\"\n[a]\ngo = \"Card {limits.name}. {x} {limits.name}\"\n");
    CHECK(words.text("a.go", {{"x", "y"}}) == "Card Limits. y Limits");
    const auto missing = Words::read("[a]\ngo = \"Card {limit.name}.\"\n", "xx.toml");
    REQUIRE_FALSE(missing.ok());
    CHECK(has(lines_of(missing.problems()), "xx.toml:2:6: error: a.go asks for {limit.name}"));
    CHECK_FALSE(Words::read("[a]\ngo = \"{a.b}\"\nb = \"{x}\"\n", "xx.toml").ok());
}

TEST_CASE("a word file that cannot be read says where") {
    const auto fault = [](const std::string& text) { return lines_of(Words::read(text, "xx.toml").problems()); };
    CHECK(has(fault("a = \"x\"\n"), "xx.toml:1:5: error: a key outside a table"));
    CHECK(has(fault("[a]\nb = 3\n"), "xx.toml:2:5: error: a word that is not a text"));
    CHECK(has(fault("[a]\nb = { one = \"x\" }\n"), "xx.toml:2:5: error: plural forms without the form \"other\""));
    CHECK(has(fault("[a]\nb = { two = \"x\", other = \"y\" }\n"), "\"two\" is no plural form"));
    CHECK(has(fault("[a\n"), "xx.toml:1:"));
}

TEST_CASE("a language that is not whole is refused when it is read, with what is wrong and where") {
    const Words model = read(language + "[a]\none = \"{x} L\"\npots = { one = \"1 pot\", other = \"{count} pots\" }\n");
    const auto faults = [&](const std::string& text, const std::vector<std::string>& also = {}) {
        const problem::Problems found = read(text).faults_against(model, also);
        for (const problem::Problem& fault : found) {
            CHECK(fault.code == problem::Code("words-incomplete"));
            CHECK(fault.place.has_value());
        }
        return lines_of(found);
    };
    const std::string pots = "pots = { one = \"1 olla\", other = \"{count} ollas\" }\n";
    CHECK(faults(language + "[a]\none = \"{x} l\"\n" + pots + "[spread]\nfilm = \"película\"\n") == "");
    CHECK(has(faults(language + "[a]\n" + pots), "xx.toml:6:1: error: no wording for a.one"));
    CHECK(has(faults(language), "no wording for a.one"));
    CHECK(has(faults(language + "[a]\none = \"{y} l\"\n" + pots), "xx.toml:7:7: error: other {places} in a.one"));
    CHECK(has(faults(language + "[a]\none = \"l\"\n" + pots), "other {places} in a.one"));
    CHECK(has(faults(language + "[a]\none = \"{x} l\"\n" + pots + "two = \"l\"\n"), "no card has the words a.two"));
    CHECK(has(faults(language + "[a]\none = \"{x} l\"\npots = \"{count} ollas\"\n"), "a.pots lacks the form \"one\""));
    CHECK(has(faults(language + "[a]\none = { one = \"{x} l\", other = \"{x} l\" }\n" + pots), "no count decides"));
    CHECK(has(faults(language + "[a]\none = \"{x} l\"\n" + pots, {"spread.film"}), "no wording for spread.film"));
    CHECK(has(
        faults(language + "[a]\none = \"{x} l\"\n" + pots + "[spread]\nfilm = \"x\"\nflim = \"x\"\n", {"spread.film"}),
        "no card has the words spread.flim"));
    const std::string quote = "[language]\ndecimal-mark = \"'\"\nclock = \"25\"\nclock-us = \"24\"\nplural = \"two\"\n";
    const std::string wrong = faults(quote + "[a]\none = \"{x} l\"\n" + pots);
    CHECK(has(wrong, "xx.toml:2:16: error: language.decimal-mark is \"'\" (\".\" or \",\")"));
    CHECK(has(wrong, "language.clock is \"25\""));
    CHECK(has(wrong, "language.plural is \"two\""));
}

TEST_CASE("a language without plural forms has one text, one with three forms gives all of them") {
    const Words model =
        read(language + "[a]\npots = { one = \"1 pot\", other = \"{count} pots\" }\nbags = \"{count} bags\"\n");
    const auto of = [](const std::string& rule, const std::string& words) {
        return read("[language]\ndecimal-mark = \",\"\nclock = \"24\"\nclock-us = \"24\"\nplural = \"" + rule +
                    "\"\n[a]\n" + words);
    };
    const Words japanese = of("none", "pots = \"{count} nabe\"\nbags = \"{count} fukuro\"\n");
    CHECK(lines_of(japanese.faults_against(model)) == "");
    CHECK(japanese.text("a.pots", {{"count", 1}}) == "1 nabe");
    const Words polish =
        of("polish",
           "pots = { one = \"1 garnek\", few = \"{count} garnki\", other = \"{count} garnków\" }\n"
           "bags = { one = \"{count} worek\", few = \"{count} worki\", other = \"{count} worków\" }\n");
    CHECK(lines_of(polish.faults_against(model)) == "");
    CHECK(polish.text("a.pots", {{"count", 3}}) == "3 garnki");
    CHECK(polish.text("a.bags", {{"count", 12}}) == "12 worków");
    const Words two =
        of("polish", "pots = { one = \"1 garnek\", other = \"{count} garnków\" }\nbags = \"{count} worków\"\n");
    CHECK(has(lines_of(two.faults_against(model)), "a.pots lacks the form \"few\""));
}

TEST_CASE("the wording in the program is that of the file it was built from, and the file is whole") {
    const auto file = Words::read(support::source_text("layouts/words/en.toml"), "en.toml");
    REQUIRE(file.ok());
    CHECK(lines_of(file->faults_against(Words::model())) == "");
    CHECK(file->all().size() == Words::model().all().size());
    CHECK(Words::model().all().size() > 600);
}
