// SPDX-License-Identifier: MIT
// Every JSON answer against its published schema, the schemas against themselves, and the checker against faults.
#include "cli/commands/commands.hpp"
#include "cli/program.hpp"
#include "support/json_schema.hpp"

#include <doctest/doctest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <map>
#include <set>

using namespace holdwater;
using namespace holdwater::support;
using nlohmann::json;

namespace {

json schema_of(const std::string& answer) {
    static std::map<std::string, json> known;
    auto found = known.find(answer);
    if (found == known.end()) {
        const Said said = holdwater_says("schema " + answer, fresh_folder("schema-" + answer));
        REQUIRE(said.exit == 0);
        found = known.emplace(answer, json::parse(said.out)).first;
    }
    return found->second;
}

/// The answer of a command, which holds by its schema.
json checked(const std::string& answer, const std::string& arguments, int exit, const std::filesystem::path& folder) {
    const Said said = holdwater_says(answer + " " + arguments + " --json", folder);
    CAPTURE(arguments);
    CAPTURE(said.err);
    CHECK(said.exit == exit);
    REQUIRE(json::accept(said.out));
    const json value = json::parse(said.out);
    for (const std::string& fault : schema_faults(value, schema_of(answer))) {
        CAPTURE(fault);
        CHECK(false);
    }
    return value;
}

std::string trip_of(const std::string& name) {
    return "'" + std::string(HOLDWATER_SOURCE_DIR) + "/" + name + ".toml'";
}

/// Calls `see` for every property of a schema, with its key and its own schema.
template <class See>
void each_property(const json& schema, See see) {
    if (schema.is_array()) {
        for (const json& part : schema) {
            each_property(part, see);
        }
    }
    if (!schema.is_object()) {
        return;
    }
    for (const auto& [word, part] : schema.items()) {
        if (word == "properties") {
            for (const auto& [key, property] : part.items()) {
                see(key, property);
            }
        }
        each_property(part, see);
    }
}

bool allows(const json& property, const std::string& type) {
    const auto found = property.find("type");
    return found != property.end() &&
           (found->is_array() ? std::find(found->begin(), found->end(), type) != found->end() : *found == type);
}

const std::vector<std::string> answers{"plan", "mend", "review", "gauge", "hold", "mix", "boil", "fingertip"};

}  // namespace

TEST_CASE("each short answer holds by its schema") {
    const auto folder = own_folder("schemas");
    checked("boil", "--altitude '1850 m'", 0, folder);
    checked("mix", "--target '60 C' --altitude '1850 m' --cold slush", 0, folder);
    checked("gauge", "--reading '0 h=62 C' --reading '5 h=55 C' --water '20 L' --outside '8 C'", 0, folder);
    checked("gauge", "--reading '0 h=62 C' --reading '0.5 h=61 C' --water '20 L' --outside '8 C' --poured '70 C'", 3,
            folder);
    checked("fingertip", "--bath '60 C'", 0, folder);
    checked("fingertip", "--bath '20 C'", 0, folder);
    checked("fingertip", "--sting '2 s'", 0, folder);
    const std::string piece = "--shape round --thickness '80 mm' --bath '62 C' --start '5 C'";
    checked("hold", "--kind pork-loin --at '1 h' " + piece, 0, folder);
    checked("hold", "--kind wild-boar " + piece, 1, folder);
    checked("hold", "--kind pork-loin --diffusivity '1.4e-7 m2/s' " + piece, 0, folder);
    checked("hold", piece + " --diffusivity '1.3e-7 m2/s' --conductivity '0.5 W/m/K' --film '95 W/m2/K'", 0, folder);
}

TEST_CASE("each plan holds by its schema, and so do refusals, two boxes and plans from here on") {
    const auto folder = own_folder("schemas-plan");
    for (const char* name : {"layouts/trips/paddling-day", "tests/plan/trips/no-thermometer",
                             "tests/plan/trips/two-meals", "tests/plan/trips/frosty-weekend"}) {
        const json plan = checked("plan", trip_of(name), 0, folder);
        CHECK(plan["verdict"] == "holds");
    }
    CHECK(checked("plan", trip_of("tests/plan/trips/two-boxes"), 0, folder)["boxes"].size() == 2);
    const json plan = checked("plan", trip_of("layouts/trips/paddling-day") + " --explain", 0, folder);
    const std::string ready = plan["fill"]["food_in"];
    const std::string now = " --now " + ready.substr(0, 16) + " --reading ";
    CHECK(checked("plan", trip_of("layouts/trips/paddling-day") + now + "'70 C'", 0, folder).contains("from_here"));
    CHECK(checked("plan", trip_of("layouts/trips/paddling-day") + now + "'31 C'", 1, folder)["verdict"] == "refused");
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");
    const auto kind = text.find("kind = \"");
    text.replace(kind, text.find('\n', kind) - kind, "kind = \"wild-boar\"");
    std::ofstream(folder / "boar.toml") << text;
    const std::string boar = "'" + (folder / "boar.toml").string() + "'";
    CHECK(checked("plan", boar, 1, folder)["verdict"] == "refused");
    CHECK(checked("mend", boar, 1, folder)["verdict"] == "refused");
    CHECK(checked("mend", trip_of("layouts/trips/paddling-day"), 0, folder)["verdict"] == "holds");
}

TEST_CASE("each review holds by its schema, with a verdict and without") {
    const auto folder = own_folder("schemas-review");
    const auto log = [&](const std::string& name, const std::string& rows) {
        std::ofstream(folder / name) << "time,bath_c,note\n" << rows;
        return " '" + (folder / name).string() + "'";
    };
    const std::string day = trip_of("layouts/trips/paddling-day");
    const std::string date = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");
    const std::string on = date.substr(date.find("serve = ") + 8, 10);
    const std::string good = on + "T13:00:00,75,food in\n" + on + "T13:30:00,68,\n" + on + "T14:00:00,67,\n";
    CHECK(checked("review", day + log("early.csv", good), 3, folder)["verdict"] == "not-done");
    const std::string cold = good + on + "T23:00:00,30,before; nothing poured\n";
    CHECK(checked("review", day + log("cold.csv", cold), 1, folder)["verdict"] == "throw-away");
    CHECK(checked("review", day + log("none.csv", ""), 2, folder)["verdict"].is_null());
}

TEST_CASE("a schema says of every number in which unit it is, and no key is of two kinds") {
    // In the unit of what they stand in, or of a key beside them; and counts, shares and powers of ten. New keys have
    // their unit in their name.
    const std::set<std::string> without_unit{
        "low",       "likely",      "high",       "error",     "value",       "loss_low",        "loss_high",
        "liner_low", "liner_high",  "low_breezy", "low_windy", "slab",        "round",           "second",
        "third",     "infant",      "hot_parts",  "kill",      "kill_likely", "adaptation",      "margin",
        "with_lag",  "without_lag", "when_ready", "moisture",  "share_error", "share_that_holds"};
    const std::vector<std::string> units{"_c",       "_k",       "_h",        "_min",       "_s",         "_l",
                                         "_kg",      "_g",       "_mm",       "_mj",        "_pa",        "_log10",
                                         "_w_per_k", "_j_per_k", "_m2_per_s", "_w_per_m_k", "_w_per_m2_k"};
    std::set<std::string> seen;
    std::map<std::string, std::set<std::string>> types;
    for (const std::string& answer : answers) {
        each_property(schema_of(answer), [&](const std::string& key, const json& property) {
            CAPTURE(answer);
            CAPTURE(key);
            for (const char* type : {"number", "string", "boolean", "object"}) {
                if (allows(property, type)) {
                    types[key].insert(type);
                }
            }
            if (!allows(property, "number")) {
                return;
            }
            const bool named =
                std::any_of(units.begin(), units.end(), [&](const std::string& u) { return key.ends_with(u); });
            CHECK(named != without_unit.contains(key));
            seen.insert(key);
        });
    }
    for (const std::string& key : without_unit) {
        CAPTURE(key);
        CHECK(seen.contains(key));
    }
    // One name a thing: these came to two things before the rule did.
    const std::set<std::string> of_two_kinds{"round",      "finish",       "rule",
                                             "likely",     "fuel",         "late_pour",
                                             "bath_c",     "growth_log10", "growth_less_kill_log10",
                                             "thickest_mm"};
    for (const auto& [key, kinds] : types) {
        CAPTURE(key);
        CHECK((kinds.size() <= 1 || of_two_kinds.contains(key)));
    }
}

TEST_CASE("there is a schema for every command that has --json, and no other") {
    for (const cli::Command& command : cli::all_commands()) {
        CAPTURE(command.name);
        CHECK((command.find("--json") != nullptr) ==
              (std::find(answers.begin(), answers.end(), command.name) != answers.end()));
    }
    const Said said = holdwater_says("schema cards", own_folder("schema-unknown"));
    CHECK(said.exit == 2);
    CHECK(said.err.find("One of: plan") != std::string::npos);
}

TEST_CASE("an answer that is otherwise in anything is found out") {
    const auto folder = own_folder("schema-faults");
    const json schema = schema_of("hold");
    const json good = json::parse(
        holdwater_says("hold --kind pork-loin --shape slab --thickness '30 mm' --bath '60 C' --start '4 C' --json",
                       folder)
            .out);
    REQUIRE(schema_faults(good, schema).empty());
    for (const auto& [key, value] : good.items()) {
        CAPTURE(key);
        json changed = good;
        changed.erase(key);
        CHECK_FALSE(schema_faults(changed, schema).empty());
        changed = good;
        changed[key] = json::array({"this", 1});
        CHECK_FALSE(schema_faults(changed, schema).empty());
    }
    json changed = good;
    changed["tide"] = 1;
    CHECK_FALSE(schema_faults(changed, schema).empty());
    changed = good;
    changed["likely"]["core_c"] = "warm";
    CHECK_FALSE(schema_faults(changed, schema).empty());
    changed = good;
    changed["use"] = "drink";
    CHECK_FALSE(schema_faults(changed, schema).empty());
    CHECK_THROWS(schema_faults(good, json{{"tides", 1}}));
    CHECK_FALSE(schema_faults("2027-07-10", json{{"type", "string"}, {"pattern", "^[0-9]{4}$"}}).empty());
    CHECK_FALSE(schema_faults(json::array({1}), json{{"type", "array"}, {"minItems", 2}}).empty());
    const json one_of{{"oneOf", {{{"type", "number"}}, {{"type", "integer"}}}}};
    CHECK(schema_faults(1.5, one_of).empty());
    CHECK_FALSE(schema_faults(1, one_of).empty());  // both
}
