// SPDX-License-Identifier: MIT
// The reader refuses faulty data: each text below differs from a sound one in a single fault.
#include "facts/read_facts.hpp"

#include "facts/kept.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace holdwater;
using namespace holdwater::facts;

namespace {

const std::string sound = R"(
[[source]]
key = "a-book"
citation = "A book."

[[source]]
key = "judgement"
citation = "Our own."

[[figure]]
key = "one.figure"
value = 2.0
unit = "K"
low = 1
high = 3.0
source = "a-book"
provenance = "read"
meaning = "a figure"

[[growth_model]]
key = "beef"
b = 0.05
lowest = 10.0
c = 0.238
highest = 53.0
q0_likely = 0.007
q0_cautious = 0.07
source = "a-book"
provenance = "memory"

[[food]]
key = "beef"
name = "beef"
category = "red-meat"
growth = "beef"
composition = { water = 70.0, protein = 20.0, fat = 9.0, ash = 1.0 }
source = "a-book"
provenance = "read"

[[kill_standard]]
key = "rows"
claim = "dead"
rows = [{ core = 54.4, min = 112 }, { core = 60.0, min = 12 }, { core = 63.3, s = 169 }]
source = "a-book"
provenance = "read"

[[figure]]
key = "hot"
value = 74.0
unit = "C"
low = 73.0
high = 75.0
source = "a-book"
provenance = "read"
meaning = "a finish"

[[figure]]
key = "hot.hold"
value = 15.0
unit = "s"
low = 0.0
high = 15.0
source = "a-book"
provenance = "read"
meaning = "its time"

[[ruleset]]
key = "far"
adviser = "a far country"
finish = { full = "hot", cut = "hot", cut_poultry = "hot", stuffed = "hot", liver = "hot", bivalve = "hot" }
at_risk = { red_meat = "hot", fish = "hot" }
hold_floor_other_red_meat = "hot"
fall = { eat_next = "hot.hold", eat_now = "hot.hold", at_risk = "hot.hold", once = "hot.hold" }
leftovers = { keep = "hot.hold", reheat = "hot" }

[[ruleset.rule]]
category = "red-meat"
cook_floor = 54.4
action_line = 57.0
cook_floor_no_thermometer = 57.2
kill_standard = "rows"
core_at_least = 54.4
hold_floor = 54.4
consumer_core = 63.0
consumer_hold_s = 180
lowest_target = 54.4
source = "a-book"
provenance = "read"

[[spread]]
key = "start"
shape = "uniform"
low = -2.0
high = 2.0
unit = "K"
provenance = "judgement"
meaning = "start"

[[burn]]
water = 55.0
second_degree_s = 17
third_degree_s = 30
source = "a-book"
provenance = "read"

[[burn]]
water = 60.0
infant_s = 1
source = "a-book"
provenance = "read"
)";

problem::Result<Facts> read_text(const std::string& text) {
    const Document documents[] = {{"given.toml", text}};
    return read_facts(documents);
}

/// The sound text with the first `from` after `after` replaced.
std::string changed(const std::string& after, const std::string& from, const std::string& to) {
    std::string text = sound;
    const std::size_t start = text.find(after);
    REQUIRE(start != std::string::npos);
    const std::size_t at = text.find(from, start);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

}  // namespace

TEST_CASE("a sound text is read, with what it holds") {
    const problem::Result<Facts> read = read_text(sound);
    for (const problem::Problem& problem : read.problems()) {
        FAIL_CHECK(problem::to_line(problem));
    }
    REQUIRE(read.ok());
    CHECK(read->value("one.figure") == 2.0);
    CHECK(read->figure("one.figure").low == 1.0);
    CHECK(read->spread("start").source == "judgement");
    CHECK(read->kill_standard("rows").rows[2].hold == units::seconds(169));
    CHECK(read->growth("beef").provenance == Provenance::memory);
    REQUIRE(read->find_rule(Ruleset{}, Category::red_meat) != nullptr);
    CHECK(read->find_rule(Ruleset{}, Category::red_meat)->consumer_hold == units::minutes(3));
    CHECK(read->rules_of(Ruleset{}).adviser == "a far country");
    CHECK(read->rules_of(Ruleset{}).fall_once == "hot.hold");
    REQUIRE(read->ruleset_names().size() == 1);
    CHECK(read->ruleset_names().front().text == "far");
    CHECK(read->burns()[1].infant == units::seconds(1));
    CHECK_FALSE(read->burns()[1].third_degree.has_value());
    CHECK(read->find_food("beef")->composition.fat == 9.0);
}

TEST_CASE("the names of the sets of rules are those of the facts in force") {
    const problem::Result<Facts> read = read_text(sound);
    REQUIRE(read.ok());
    CHECK_FALSE(from_name<Ruleset>("far").has_value());
    const FactsInForce here{*read};
    CHECK(from_name<Ruleset>("far") == Ruleset{});
    CHECK_FALSE(from_name<Ruleset>("us").has_value());
}

TEST_CASE("what is kept is made again when other facts come into force, and when they go") {
    const problem::Result<Facts> read = read_text(sound);
    REQUIRE(read.ok());
    int made = 0;
    const auto foods = [&made] {
        return kept([&made](const Facts& facts) {
            ++made;
            return facts.foods().size();
        });
    };
    const std::size_t all = facts::facts().foods().size();
    CHECK(foods() == all);
    CHECK(foods() == all);
    CHECK(made == 1);
    {
        const FactsInForce here{*read};
        CHECK(foods() == 1);
    }
    CHECK(foods() == all);
    CHECK(made == 3);
}

TEST_CASE("entries of several documents belong together") {
    const std::size_t cut = sound.find("[[figure]]");
    const std::string first = sound.substr(cut);
    const std::string second = sound.substr(0, cut);
    const Document documents[] = {{"b.toml", first}, {"a.toml", second}};
    CHECK(read_facts(documents).ok());
    const Document alone[] = {{"b.toml", first}};
    CHECK_FALSE(read_facts(alone).ok());
}

TEST_CASE("each fault is found and named") {
    struct Case {
        const char* what;
        const char* after;
        const char* from;
        const char* to;
        problem::Code code;
    };
    const Case cases[] = {
        {"not TOML", "[[source]]", "citation = ", "citation ", "facts-toml"},
        {"unknown kind of entry", "[[spread]]", "[[spread]]", "[[spreads]]", "facts-key-unknown"},
        {"unknown key", "[[figure]]", "unit = ", "units = ", "facts-key-unknown"},
        {"missing key", "[[figure]]", "meaning = \"a figure\"", "", "facts-key-missing"},
        {"missing number", "[[spread]]", "low = -2.0", "", "facts-key-missing"},
        {"text for a number", "[[figure]]", "2.0", "\"2.0\"", "facts-type"},
        {"number for a text", "[[figure]]", "\"K\"", "3", "facts-type"},
        {"empty text", "[[figure]]", "\"a figure\"", "\"\"", "facts-type"},
        {"not a number", "[[figure]]", "2.0", "nan", "facts-type"},
        {"without end", "[[spread]]", "high = 2.0", "high = inf", "facts-type"},
        {"unknown source of a figure", "[[figure]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"unknown source of a food", "[[food]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"unknown source of a rule", "[[ruleset.rule]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"unknown source of a burn", "[[burn]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"unknown source of kill", "[[kill_standard]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"unknown source of growth", "[[growth_model]]", "\"a-book\"", "\"no-book\"", "facts-source-unknown"},
        {"no source, though read", "[[figure]]", "source = \"a-book\"", "", "facts-key-missing"},
        {"unknown provenance", "[[figure]]", "\"read\"", "\"heard\"", "facts-name-unknown"},
        {"value under its range", "[[figure]]", "value = 2.0", "value = 0.9", "facts-range"},
        {"value over its range", "[[figure]]", "value = 2.0", "value = 3.1", "facts-range"},
        {"spread without width", "[[spread]]", "high = 2.0", "high = -2.0", "facts-range"},
        {"spread upside down", "[[spread]]", "high = 2.0", "high = -3.0", "facts-range"},
        {"lognormal through zero", "[[spread]]", "\"uniform\"", "\"lognormal\"", "facts-range"},
        {"unknown shape", "[[spread]]", "\"uniform\"", "\"flat\"", "facts-name-unknown"},
        {"unknown category", "[[food]]", "\"red-meat\"", "\"meat\"", "facts-name-unknown"},
        {"no such figure for a finish", "[[ruleset]]", "full = \"hot\"", "full = \"cold\"", "facts-reference-unknown"},
        {"a finish without its time", "key = \"hot.hold\"", "hot.hold", "hot.time", "facts-reference-unknown"},
        {"a time for a temperature", "[[ruleset]]", "fish = \"hot\"", "fish = \"hot.hold\"", "facts-reference-unknown"},
        {"a temperature for a time", "[[ruleset]]", "eat_now = \"hot.hold\"", "eat_now = \"hot\"",
         "facts-reference-unknown"},
        {"a rule on falls that is not known", "[[ruleset]]", "once = ", "twice = ", "facts-key-unknown"},
        {"no adviser", "[[ruleset]]", "adviser = \"a far country\"", "", "facts-key-missing"},
        {"no rule at all", "[[ruleset.rule]]", "[[ruleset.rule]]", "[[ruleset.rules]]", "facts-key-unknown"},
        {"unknown category of a rule", "[[ruleset.rule]]", "\"red-meat\"", "\"meat\"", "facts-name-unknown"},
        {"composition that adds up wrongly", "[[food]]", "water = 70.0", "water = 7.0", "facts-range"},
        {"negative part", "[[food]]", "ash = 1.0", "ash = -1.0", "facts-range"},
        {"unknown part", "[[food]]", "ash = 1.0", "ash = 1.0, salt = 0.1", "facts-key-unknown"},
        {"unknown growth model", "[[food]]", "growth = \"beef\"", "growth = \"fish\"", "facts-reference-unknown"},
        {"unknown kill standard", "[[ruleset.rule]]", "\"rows\"", "\"none\"", "facts-reference-unknown"},
        {"rows that fall", "[[kill_standard]]", "60.0", "50.0", "facts-range"},
        {"hotter but longer", "[[kill_standard]]", "min = 12 ", "min = 120 ", "facts-range"},
        {"a hold of nothing", "[[kill_standard]]", "s = 169", "s = 0", "facts-range"},
        {"no rows", "[[kill_standard]]",
         "rows = [{ core = 54.4, min = 112 }, { core = 60.0, min = 12 }, { core = 63.3, s = 169 }]", "rows = []",
         "facts-range"},
        {"action line at the floor", "[[ruleset.rule]]", "action_line = 57.0", "action_line = 54.4", "facts-range"},
        {"blind floor too low", "[[ruleset.rule]]", "57.2", "54.0", "facts-range"},
        {"target under the floor", "[[ruleset.rule]]", "lowest_target = 54.4", "lowest_target = 50.0", "facts-range"},
        {"third degree first", "[[burn]]", "third_degree_s = 30", "third_degree_s = 10", "facts-range"},
        {"burn rows that fall", "[[burn]]\nwater = 60", "water = 60.0", "water = 55.0", "facts-range"},
        {"cautious q0 too low", "[[growth_model]]", "q0_cautious = 0.07", "q0_cautious = 0.001", "facts-range"},
        {"growth limits crossed", "[[growth_model]]", "highest = 53.0", "highest = 5.0", "facts-range"},
        {"source twice", "key = \"judgement\"", "judgement", "a-book", "facts-twice"},
        {"judgement without its source", "key = \"judgement\"", "judgement", "mine", "facts-source-unknown"},
    };
    for (const Case& one : cases) {
        INFO(one.what);
        const problem::Result<Facts> read = read_text(changed(one.after, one.from, one.to));
        CHECK_FALSE(read.ok());
        CHECK(std::any_of(read.problems().begin(), read.problems().end(),
                          [&one](const problem::Problem& p) { return p.code == one.code; }));
    }
}

TEST_CASE("all faults are reported, each with its place") {
    std::string text = changed("[[spread]]", "high = 2.0", "high = -2.0");
    text.replace(text.find("value = 2.0"), 11, "value = 9.0");
    const problem::Result<Facts> read = read_text(text);
    REQUIRE(read.problems().size() == 2);
    for (const problem::Problem& problem : read.problems()) {
        REQUIRE(problem.place.has_value());
        CHECK(problem.place->file == "given.toml");
        CHECK(problem.place->line > 0);
    }
}

TEST_CASE("the checksum sees every letter, and where a text ends") {
    const Document one[] = {{"a", "xy"}, {"b", "z"}};
    const Document moved[] = {{"a", "x"}, {"b", "yz"}};
    const Document renamed[] = {{"a", "xy"}, {"c", "z"}};
    CHECK(checksum_of(one) == checksum_of(one));
    CHECK(checksum_of(one) != checksum_of(moved));
    CHECK(checksum_of(one) != checksum_of(renamed));
    // FNV-1a of nothing is its published offset basis.
    CHECK(checksum_of({}) == "cbf29ce484222325");
}

TEST_CASE("a key of many thousand parts is refused with its place") {
    std::string deep = "a";
    for (int i = 0; i < 31000; ++i) {
        deep += ".a";
    }
    const problem::Result<Facts> read = read_text(sound + "\n" + deep + " = 1\n");
    REQUIRE_FALSE(read.ok());
    CHECK(read.problems().front().code == problem::Code("facts-toml"));
    REQUIRE(read.problems().front().place.has_value());
    CHECK(read.problems().front().place->line == std::count(sound.begin(), sound.end(), '\n') + 2);
}
