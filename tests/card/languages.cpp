// SPDX-License-Identifier: MIT
// The word files of other languages than English: whole, shown by the typeface, and nothing English left on a card.
#include "card/shared/own_words.hpp"
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
#include <map>
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
    const auto words = words::Words::read(file_text((top / "layouts/words" / (language + ".toml")).string()), language);
    REQUIRE(words.ok());
    return *words;
}

/// Symbols, places alone, and words that are the same in another language.
bool same_as_english(const std::string& language, const std::string& key, const std::string& text) {
    static const std::map<std::string, std::set<std::string>> words{
        {"es", {"no", "Plan", "plan", "–"}},
        {"fr",
         {"Plan", "plan", "–", "Canada", "Propane", "Butane", "possible", "litres", "portion", "Sources", "source",
          "Verdict"}}};
    const auto found = words.find(language);
    const std::set<std::string> same = found == words.end() ? std::set<std::string>{} : found->second;
    static const std::regex places(R"(([^A-Za-z]|\{[a-z0-9-]+\})*)");
    return key.starts_with("language.") || key.starts_with("deck.away") || same.contains(text) || text == "°C" ||
           text == "°F" || std::regex_match(text, places);
}

/// A demo whose own names are not English, so that no English of the user is taken for the program's.
trip::Trip renamed_demo(const std::string& path) {
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

}  // namespace

TEST_CASE("every language has the keys and places of English, and no other") {
    const words::Words english = words_of("en");
    REQUIRE(english.all().size() > 300);
    for (const std::string& language : other_languages()) {
        CAPTURE(language);
        const words::Words own = words_of(language);
        std::string faults;
        for (const problem::Problem& fault :
             own.faults_against(words::Words::model(), card::keys_of_other_languages())) {
            faults += problem::to_line(fault) + "\n";
        }
        CHECK(faults == "");
        for (const auto& [key, wording] : own.all()) {
            CAPTURE(key);
            for (const auto& [form, text] : wording.forms) {
                CHECK(!text.empty());
                CHECK(std::count(text.begin(), text.end(), '*') % 2 == 0);
                if (const auto meant = english.find(key); meant && !same_as_english(language, key, text)) {
                    CHECK(text != *meant);
                }
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
        std::string rows = rule.kill_standard;
        std::replace(rows.begin(), rows.end(), '.', '-');
        const std::string key = "plan.rows-" + rows;
        CAPTURE(key);
        CHECK(english.has(key));
    }
}

TEST_CASE("a remark under a code that the program does not know is reported with its line") {
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
        for (const auto& [key, wording] : own.all()) {
            CAPTURE(key);
            for (const auto& [form, text] : wording.forms) {
                CHECK(by.covers(text, layout::Weight::regular));
                CHECK(by.covers(text, layout::Weight::bold));
            }
        }
    }
}

TEST_CASE("a card of another language holds the numbers of the English one, with its own decimal mark and clock") {
    static const std::regex point_between(R"(\d\.\d)");
    static const std::regex comma_between(R"(\d,\d)");
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        Dealt dealt(path);
        for (const std::string& language : other_languages()) {
            CAPTURE(language);
            const bool comma = words_of(language).written(units::decimal(0.5, 1)) == "0,5";
            for (const std::string_view system : units::system_names()) {
                CAPTURE(system);
                dealt.deal(units::system_named(system), "en");
                const card::Deck english = dealt.deck;
                dealt.deal(units::system_named(system), language);
                REQUIRE(english.cards.size() == dealt.deck.cards.size());
                for (std::size_t i = 0; i < english.cards.size(); ++i) {
                    CAPTURE(english.cards[i].key);
                    const std::string text = joined(texts_of(dealt.deck.cards[i]));
                    CHECK_FALSE(std::regex_search(text, comma ? point_between : comma_between));
                    CHECK(numbers_of(with_points(text)) == numbers_of(joined(texts_of(english.cards[i]))));
                }
            }
        }
    }
}

TEST_CASE("no English is left on a card of another language") {
    const std::string english =
        R"(the|of|and|or|with|water|box|bath|bag|pot|hours|hour|below|above|under|over|reading|reads|boiling|)"
        R"(cold|food|lid|top|keep|hold|fire|at|to|from|until|never|card|leave|wake|slice|throw|away|eat|out|)"
        R"(warm|snow|ice|each|Sun|Mon|Tue|Wed|Thu|Fri|Sat|only|always|WARNING|CAUTION|quarts|US|UK|daylight)";
    // What is a word of the one and none of the other.
    const std::map<std::string, std::string> more{{"es", "|pour|litres"}, {"fr", "|no|safe|warning"}};
    for (const std::string& language : other_languages()) {
        CAPTURE(language);
        REQUIRE(more.contains(language));
        const std::regex word("\\b(" + english + more.at(language) + ")\\b");
        REQUIRE(std::regex_search("Top up, at once", word));
        for (const std::string& path : trip_paths()) {
            CAPTURE(path);
            Dealt dealt(renamed_demo(path));
            for (const std::string_view system : units::system_names()) {
                dealt.deal(units::system_named(system), language);
                for (const std::string& text : texts_of(dealt.deck)) {
                    CAPTURE(text);
                    CHECK_FALSE(std::regex_search(text, word));
                }
                CHECK_FALSE(std::regex_search(dealt.deck.footer, word));
            }
        }
    }
}

TEST_CASE("figures get the decimal mark of the language, names that the user gave stay as they are") {
    trip::Trip trip = trip_at("tests/plan/trips/frosty-weekend.toml");
    trip.name = "Camp 3.5";
    trip.foods.front().name = "Loin 2.5";
    trip.sides.front().name = "barley 1.5";
    Dealt dealt(std::move(trip));
    static const std::regex with_point(R"(\d\.\d)");
    const auto each = [&](const std::string& language, std::string_view system) {
        CAPTURE(language);
        CAPTURE(system);
        dealt.deal(units::system_named(system), language);
        CHECK(dealt.deck.title == "Camp 3.5");
        const std::string cards = joined(texts_of(dealt.deck));
        std::string figures = cards;
        for (const char* name : {"Loin 2.5", "Camp 3.5", "barley 1.5"}) {
            CAPTURE(name);
            if (dealt.deck.title != name) {  // the title stands at the foot, which layout makes
                CHECK(cards.find(name) != std::string::npos);
            }
            for (auto at = figures.find(name); at != std::string::npos; at = figures.find(name)) {
                figures.erase(at, std::string(name).size());
            }
        }
        std::smatch found;
        CAPTURE(std::regex_search(figures, found, with_point)
                    ? figures.substr(static_cast<std::size_t>(std::max<std::ptrdiff_t>(found.position() - 60, 0)), 120)
                    : "");
        CHECK_FALSE(std::regex_search(figures, with_point));
        CHECK(std::regex_search(figures, std::regex(R"(\d,\d)")));
    };
    for (const std::string_view system : units::system_names()) {
        each("es", system);
        each("fr", system);
    }
}

TEST_CASE("every remark that may stand on the basis sheets has its words in every language") {
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
        for (const auto& [key, wording] : own.all()) {
            CAPTURE(key);
            CHECK((!key.starts_with("remark.") || codes.contains(key.substr(7))));
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
