// SPDX-License-Identifier: MIT
// What the tables of data must keep among themselves.
#include "facts/read_facts.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

using namespace holdwater;
using namespace holdwater::facts;

TEST_CASE("every set of rules covers the same categories") {
    for (const Name<Ruleset>& ruleset : names<Ruleset>()) {
        INFO(ruleset.text);
        for (const Category category : {Category::red_meat, Category::poultry, Category::fish, Category::farmed_game,
                                        Category::wild_game, Category::liver, Category::bivalve}) {
            CHECK(facts::facts().find_rule(ruleset.value, category) != nullptr);
        }
        for (const Category category :
             {Category::boar_or_bear, Category::egg, Category::vegetable, Category::cooked_dish}) {
            CHECK(facts::facts().find_rule(ruleset.value, category) == nullptr);
        }
    }
}

TEST_CASE("floors, credit and targets fit together in every rule") {
    for (const Rule& rule : facts::facts().rules()) {
        INFO(to_name(rule.ruleset), " ", to_name(rule.category));
        const KillStandard& kill = facts::facts().kill_standard(rule.kill_standard);
        // A core that may be called done has reached a credited row.
        CHECK(rule.core_at_least >= kill.rows.front().core);
        CHECK(rule.core_at_least <= rule.lowest_target);
        CHECK(rule.cook_floor_no_thermometer > rule.cook_floor);
        CHECK(rule.action_line - rule.cook_floor >= units::kelvins(2.6 - 1e-9));
        CHECK(rule.consumer_core >= rule.core_at_least);
        if (rule.category == Category::poultry || rule.category == Category::fish) {
            CHECK(rule.cook_floor_no_thermometer >= facts::facts().temperature("wax.floor"));
        }
    }
}

TEST_CASE("no set of rules is looser than us on floors") {
    for (const Rule& rule : facts::facts().rules()) {
        INFO(to_name(rule.ruleset), " ", to_name(rule.category));
        const Rule& us = *facts::facts().find_rule(support::ruleset("us"), rule.category);
        CHECK(rule.cook_floor >= us.cook_floor);
        CHECK(rule.hold_floor >= us.hold_floor);
        CHECK(rule.cook_floor_no_thermometer >= us.cook_floor_no_thermometer);
        if (rule.ruleset != support::ruleset("us")) {
            CHECK(rule.cook_floor >= units::celsius(60));
        }
        if (rule.ruleset == support::ruleset("uk")) {
            CHECK(rule.hold_floor >= units::celsius(63));
        }
    }
}

TEST_CASE("what the sets of rules name fits together") {
    const Facts& facts = facts::facts();
    for (const GeneralRules& rules : facts.rulesets()) {
        INFO(rules.key);
        CHECK(facts.duration(rules.eat_next) <= facts.duration(rules.eat_now));
        CHECK(facts.duration(rules.fall_at_risk) <= facts.duration(rules.eat_now));
        CHECK(facts.temperature(rules.finish_full) >= units::celsius(74));
        CHECK(facts.temperature(rules.finish_cut) >= units::celsius(70));
        for (const std::string& finish : {rules.finish_cut_poultry, rules.finish_stuffed}) {
            CHECK(facts.temperature(finish) >= units::celsius(70));
        }
    }
    // What was read of each country (nsw-2h4h, uk-food-hygiene-2005, acmsf-2007).
    CHECK(facts.rules_of(support::ruleset("au-nz")).adviser_note == "none of Australia or New Zealand was read");
    CHECK(facts.rules_of(support::ruleset("uk")).fall_once == "fall.uk");
    CHECK(facts.rules_of(support::ruleset("uk")).finish_cut == "finish.uk");
    CHECK_FALSE(facts.rules_of(support::ruleset("us")).fall_once.has_value());
}

TEST_CASE("only the US have a steak rule, and whoever keeps food hot keeps it at what was read") {
    const Facts& facts = facts::facts();
    for (const GeneralRules& rules : facts.rulesets()) {
        INFO(rules.key);
        CHECK(rules.steak.has_value() == (rules.key == "us"));
        REQUIRE(rules.keep_hot);
        const double floor = rules.key == "us" ? 57.2 : rules.key == "uk" ? 63.0 : 60.0;
        CHECK(facts.temperature(rules.keep_hot->floor) == units::celsius(floor));
        CHECK(facts.temperature(rules.keep_hot->reheat) >= units::celsius(70));
        // What is asked of the core by none is never credited below the floor at which it is held.
        CHECK(facts.kill_standard(rules.keep_hot->kill_standard).rows.front().core <= units::celsius(floor));
    }
    const SteakRule& steak = *facts.rules_of(support::ruleset("us")).steak;
    CHECK(facts.temperature(steak.surface) == units::celsius(63));
    CHECK(facts.kill_standard(steak.kill_standard).none_asked);
    CHECK_FALSE(facts.kill_standard("us-red-meat-6.5").none_asked);
}

TEST_CASE("foods say of what they are: every beef cut is beef, and nothing else is") {
    for (const FoodKind& kind : facts::facts().foods()) {
        INFO(kind.key);
        CHECK(kind.beef == kind.key.starts_with("beef-"));
        CHECK((!kind.beef || kind.category == Category::red_meat));
    }
}

TEST_CASE("how long food is good to hold: fish for less than white poultry, that for less than lean pork") {
    const Facts& facts = facts::facts();
    const auto longest = [&](const char* key) { return facts.longest_for_texture(*facts.find_food(key)); };
    for (const FoodKind& kind : facts.foods()) {
        INFO(kind.key);
        CHECK((kind.category != Category::fish || facts.longest_for_texture(kind).has_value()));
    }
    CHECK(longest("trout-farmed") == units::hours(1));
    CHECK(longest("chicken-breast") == units::hours(4));
    CHECK(*longest("trout-farmed") < *longest("chicken-breast"));
    CHECK(*longest("chicken-breast") < *longest("pork-loin"));
    CHECK_FALSE(longest("beef-chuck").has_value());
    CHECK_FALSE(longest("stew").has_value());
}

TEST_CASE("every lever adds something to a face, and names its source") {
    CHECK(facts::facts().levers().size() >= 6);
    for (const Lever& lever : facts::facts().levers()) {
        INFO(lever.key);
        CHECK(lever.low > units::ThermalResistance{0});
        CHECK(lever.high >= lever.low);
        CHECK_NOTHROW(facts::facts().source(lever.source));
        CHECK_FALSE(lever.what.empty());
    }
}

TEST_CASE("every source is cited, by an entry, a formula or a test") {
    std::string texts;
    for (const char* folder : {"src", "tests"}) {
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(std::string(HOLDWATER_SOURCE_DIR) + "/" + folder)) {
            if (entry.is_regular_file()) {
                std::ifstream file(entry.path());
                texts.append(std::istreambuf_iterator<char>(file), {});
            }
        }
    }
    for (const Source& source : facts::facts().sources()) {
        INFO(source.key);
        std::size_t found = 0;
        for (std::size_t at = texts.find(source.key); at != std::string::npos; at = texts.find(source.key, at + 1)) {
            ++found;
        }
        CHECK(found >= 2);
    }
}

TEST_CASE("units are those that the program writes") {
    const std::set<std::string> known{"1",     "C",     "K",      "mm",     "um",    "m",       "L",    "kg",
                                      "s",     "min",   "h",      "1/s",    "1/h",   "J/kg/K",  "J/kg", "MJ/kg",
                                      "W/m/K", "W/m2",  "W/m2/K", "m2/s",   "kg/m3", "kJ/m2/K", "K/h",  "m2 K/W",
                                      "m/s",   "kg/m2", "J/m2/K", "arcmin", "W/K"};
    for (const Figure& figure : facts::facts().figures()) {
        INFO(figure.key, " ", figure.unit);
        CHECK(known.contains(figure.unit));
    }
    for (const Spread& spread : facts::facts().spreads()) {
        INFO(spread.key, " ", spread.unit);
        CHECK(known.contains(spread.unit));
    }
}
