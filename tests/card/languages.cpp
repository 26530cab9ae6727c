// SPDX-License-Identifier: MIT
// The word files of other languages than English: whole, shown by the typeface, and nothing English left on a card.
#include "card/shared/numbers.hpp"
#include "card/texts.hpp"
#include "draw/draw.hpp"
#include "facts/facts.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"
#include "support/typeface.hpp"
#include "words/words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <regex>
#include <set>
#include <string>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const fs::path top = HOLDWATER_SOURCE_DIR;

words::Words words_of(const std::string& language) {
    const auto words =
        words::Words::read(file_text((top / "layouts/words" / (language + ".toml")).string()), language);
    REQUIRE(words.ok());
    return *words;
}

std::vector<std::string> other_languages() {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(top / "layouts/words")) {
        if (entry.path().stem() != "en") {
            found.push_back(entry.path().stem().string());
        }
    }
    REQUIRE(!found.empty());
    return found;
}

/// Symbols, places alone, and words that are the same in Spanish.
bool same_in_spanish(const std::string& key, const std::string& text) {
    static const std::set<std::string> same{"no", "Plan", "plan", "–"};
    static const std::regex places(R"(([^A-Za-z]|\{[a-z0-9-]+\})*)");
    return key.starts_with("language.") || key.starts_with("deck.away") || same.contains(text) || text == "°C" || text == "°F" ||
           std::regex_match(text, places);
}

/// A demo whose own names are Spanish, so that no English of the user is taken for the program's.
trip::Trip spanish_demo(const std::string& path) {
    trip::Trip trip = trip_at(path);
    int n = 0;
    for (trip::Food& food : trip.foods) {
        food.name = "pieza " + std::string(1, static_cast<char>('A' + n++));
    }
    for (trip::Side& side : trip.sides) {
        side.name = "cebada";
    }
    for (trip::WhatIf& what : trip.what_ifs) {
        what.name = "helada";
    }
    return trip;
}

/// Every number of a card in order of size; a clock time of twelve hours as one of twenty-four.
std::multiset<std::string> numbers_of(const std::string& text) {
    std::multiset<std::string> numbers;
    static const std::regex number(R"((\d+):(\d\d)( [ap]m)?|\d+(\.\d+)?)");
    for (std::sregex_iterator it(text.begin(), text.end(), number); it != std::sregex_iterator{}; ++it) {
        std::string one = it->str();
        if ((*it)[1].matched) {
            int hour = std::stoi((*it)[1]);
            const std::string half = (*it)[3].str();
            hour = half == " pm" ? hour % 12 + 12 : half == " am" ? hour % 12 : hour;
            one = (hour < 10 ? "0" : "") + std::to_string(hour) + ":" + (*it)[2].str();
        }
        numbers.insert(one);
    }
    return numbers;
}

std::string with_points(const std::string& text) {
    static const std::regex comma(R"((\d),(\d))");
    return std::regex_replace(text, comma, "$1.$2");
}

std::string told_in(const words::Words& words, std::string english) {
    return words.has("told." + words::Words::translation_key(english)) ? "" : english;
}

}  // namespace

TEST_CASE("every language has the keys and places of English, and no other") {
    const words::Words english = words_of("en");
    REQUIRE(english.all().size() > 300);
    for (const std::string& language : other_languages()) {
        CAPTURE(language);
        const words::Words own = words_of(language);
        std::string faults;
        for (const problem::Problem& fault : own.faults_against(english, language + ".toml")) {
            faults += problem::to_line(fault) + "\n";
        }
        CHECK(faults == "");
        for (const auto& [key, text] : own.all()) {
            CAPTURE(key);
            CHECK(!text.empty());
            CHECK(std::count(text.begin(), text.end(), '*') % 2 == 0);
            if (english.has(key) && !same_in_spanish(key, text)) {
                CHECK(text != english.all().find(key)->second);
            }
        }
    }
}

TEST_CASE("every set of rules has its words: whose advice it sets a target against, and what its rows are") {
    const words::Words english = words_of("en");
    for (const facts::GeneralRules& rules : facts::facts().rulesets()) {
        CAPTURE(rules.key);
        CHECK(english.has("plan.whose-" + rules.key));
    }
    for (const facts::Rule& rule : facts::facts().rules()) {
        std::string key = "plan.rows-" + rule.kill_standard;
        std::replace(key.begin(), key.end(), '.', '-');
        CAPTURE(key);
        CHECK(english.has(key));
    }
}

TEST_CASE("a language file that is not whole is refused, with what is wrong") {
    const auto english = words::Words::read("[language]\ndecimal-mark = \".\"\nclock = \"24\"\nclock-us = \"12\"\n"
                                            "[a]\none = \"{x} L\"\n",
                                            "en.toml");
    REQUIRE(english.ok());
    const auto faults = [&](const std::string& text) {
        const auto own = words::Words::read(text, "xx.toml");
        REQUIRE(own.ok());
        std::string lines;
        for (const problem::Problem& fault : own->faults_against(*english, "xx.toml")) {
            CHECK(fault.code == problem::Code("words-incomplete"));
            lines += problem::to_line(fault) + "\n";
        }
        return lines;
    };
    const std::string language = "[language]\ndecimal-mark = \",\"\nclock = \"24\"\nclock-us = \"24\"\n";
    CHECK(faults(language + "[a]\none = \"{x} l\"\n[told]\nread = \"leído\"\n") == "");
    CHECK(faults(language).find("no wording for a.one") != std::string::npos);
    CHECK(faults(language + "[a]\none = \"{y} l\"\n").find("{places} in a.one") != std::string::npos);
    CHECK(faults(language + "[a]\none = \"{x} l\"\ntwo = \"l\"\n").find("a.two") != std::string::npos);
    CHECK(faults("[language]\ndecimal-mark = \"'\"\nclock = \"24\"\nclock-us = \"24\"\n[a]\none = \"{x} l\"\n")
              .find("decimal-mark") != std::string::npos);
}

TEST_CASE("a remark under a code that the program does not know is told with its line") {
    CHECK(words::Words::read("[remark]\nsleep-long = \"largo\"\n", "xx.toml").ok());
    const auto mistyped = words::Words::read("[remark]\nsleep-long = \"largo\"\nsleep-lnog = \"largo\"\n", "xx.toml");
    REQUIRE_FALSE(mistyped.ok());
    const std::string line = problem::to_line(mistyped.problems().front());
    CHECK(line.starts_with("xx.toml:3:1: "));
    CHECK(line.find("sleep-lnog") != std::string::npos);
}

TEST_CASE("the typeface has every character of every language") {
    const layout::Measure& by = real_measure();
    CHECK_FALSE(by.covers("水", layout::Weight::regular));
    for (const std::string& language : other_languages()) {
        const words::Words own = words_of(language);
        for (const auto& [key, text] : own.all()) {
            CAPTURE(key);
            CHECK(by.covers(text, layout::Weight::regular));
            CHECK(by.covers(text, layout::Weight::bold));
        }
    }
}

TEST_CASE("a Spanish card holds the numbers of the English one, with its own decimal mark and clock") {
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        Dealt dealt(path);
        for (const std::string_view system : units::system_names()) {
            CAPTURE(system);
            dealt.deal(units::system_named(system), "en");
            const card::Deck english = dealt.deck;
            dealt.deal(units::system_named(system), "es");
            REQUIRE(english.cards.size() == dealt.deck.cards.size());
            for (std::size_t i = 0; i < english.cards.size(); ++i) {
                CAPTURE(english.cards[i].key);
                const std::string text = joined(texts_of(dealt.deck.cards[i]));
                CHECK_FALSE(std::regex_search(text, std::regex(R"(\d\.\d|\d [ap]m)")));
                CHECK(numbers_of(with_points(text)) == numbers_of(joined(texts_of(english.cards[i]))));
            }
        }
    }
}

TEST_CASE("no English is left on a Spanish card") {
    static const std::regex english(
        R"(\b(the|of|and|or|with|water|box|bath|bag|pot|hours|hour|below|above|under|over|reading|reads|boiling|)"
        R"(cold|food|lid|pour|top|keep|hold|fire|at|to|from|until|never|card|leave|wake|slice|throw|away|eat|out|)"
        R"(warm|snow|ice|each|Sun|Mon|Tue|Wed|Thu|Fri|Sat|only|always|WARNING|CAUTION|quarts|litres|US|UK|daylight)\b)");
    REQUIRE(std::regex_search("Top up, pour", english));
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        Dealt dealt(spanish_demo(path));
        for (const std::string_view system : units::system_names()) {
            dealt.deal(units::system_named(system), "es");
            for (const std::string& text : texts_of(dealt.deck)) {
                CAPTURE(text);
                CHECK_FALSE(std::regex_search(text, english));
            }
            CHECK_FALSE(std::regex_search(dealt.deck.footer, english));
        }
    }
}

TEST_CASE("what the program says in English on the basis sheets is told in every language") {
    const Dealt dealt("layouts/trips/trail-crew.toml");
    const Dealt no_thermometer("tests/card/trips/no-thermometer-beef.toml");
    const words::Words english = words_of("en");
    static const std::regex end(R"((_(c|h|mm|l|kg|g))?(: .*)?$)");
    for (const std::string& language : other_languages()) {
        const words::Words own = words_of(language);
        for (const Dealt* one : {&dealt, &no_thermometer}) {
            for (const card::CardNumber& number : card::card_numbers({one->plan, english})) {
                std::string name = std::regex_replace(number.name, end, "", std::regex_constants::format_first_only);
                name = std::regex_replace(name, std::regex(R"(_\d+$)"), "");
                std::replace(name.begin(), name.end(), '_', ' ');
                CHECK(told_in(own, name) == "");
                CHECK(told_in(own, number.quantile) == "");
                CHECK(told_in(own, number.rounding) == "");
            }
        }
        for (const facts::Spread& spread : facts::facts().spreads()) {
            CAPTURE(spread.key);
            CHECK(own.has("spread." + words::Words::translation_key(spread.key)));
            CHECK(told_in(own, std::string(facts::to_text(spread.provenance))) == "");
        }
    }
}

TEST_CASE("every remark that may stand on the basis sheets is told in every language") {
    // table.warning("key", "code", ...), report.warning(place, "code", ...), problem::note("code", ...)
    static const std::regex call(
        R"re((?:warning|note)\(\s*(?:(?:key|[a-z_.]+place|place\(0, 0\)|gap\.place|"[a-z_]+"),\s*)?"([a-z]+(?:-[a-z]+)*)")re");
    std::set<std::string> codes;
    for (const char* folder : {"src/trip", "src/plan"}) {
        for (const auto& entry : fs::recursive_directory_iterator(top / folder)) {
            const std::string text = entry.path().extension() == ".cpp" ? file_text(entry.path().string()) : "";
            for (std::sregex_iterator it(text.begin(), text.end(), call); it != std::sregex_iterator{}; ++it) {
                codes.insert((*it)[1]);
            }
        }
    }
    REQUIRE(codes.size() >= 20);
    REQUIRE(codes.contains("sleep-long"));
    REQUIRE(codes.contains("mass-against-size"));
    codes.erase("mend");  // of a refused trip, which has no sheets
    codes.erase("no-mend");
    for (const std::string& language : other_languages()) {
        const words::Words own = words_of(language);
        for (const std::string& code : codes) {
            CAPTURE(code);
            CHECK(own.has("remark." + code));
        }
    }
}

TEST_CASE("a word file with a key of many thousand parts is refused with its place") {
    std::string deep = "a";
    for (int i = 0; i < 31000; ++i) {
        deep += ".a";
    }
    const auto words = words::Words::read("[plan]\n" + deep + " = \"x\"\n", "xx.toml");
    REQUIRE_FALSE(words.ok());
    CHECK(problem::to_line(words.problems().front()).starts_with("xx.toml:2:32: error: "));
}
