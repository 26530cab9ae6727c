// SPDX-License-Identifier: MIT
// Refusals and standards: kind x cut x target x rules x eaters x thermometer.
#include "safety/standard.hpp"

#include "safety/refusals.hpp"
#include "safety/table.hpp"
#include "support/near.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace holdwater;
using namespace holdwater::safety;
using support::near_abs;

namespace {

/// Texts print with no-break spaces; the table is written with plain ones.
std::string plain(std::string text) {
    const std::string no_break = "\u00A0";
    for (std::size_t at = text.find(no_break); at != std::string::npos; at = text.find(no_break)) {
        text.replace(at, no_break.size(), " ");
    }
    return text;
}

}  // namespace

TEST_CASE("each refused request says why, what would do, and by which source") {
    const std::vector<support::Row> rows = support::rows_of("refusals.txt");
    CHECK(rows.size() >= 60);
    std::set<std::string> cases;
    for (const support::Row& row : rows) {
        INFO(row.at(0));
        REQUIRE(row.size() == 11);
        CHECK(cases.insert(row[0]).second);
        const Request request = support::request_of(row);
        const problem::Result<Standard> result = standard_for(request);
        CHECK_FALSE(result.ok());
        if (result.ok()) {
            continue;
        }
        REQUIRE(result.problems().size() == 1);
        const problem::Problem& problem = result.problems().front();
        CHECK(problem.code.text() == row[7]);
        CHECK(refusal_source(request) == row[8]);
        CHECK_NOTHROW(facts::facts().source(refusal_source(request)));
        CHECK_MESSAGE(plain(problem.message).find(row[9]) != std::string::npos, plain(problem.message));
        CHECK_MESSAGE(plain(problem.hint).find(row[10]) != std::string::npos, plain(problem.hint));
    }
}

TEST_CASE("each allowed request gets the floors, core and finish that were decided") {
    for (const support::Row& row : support::rows_of("allowed.txt")) {
        INFO(row.at(0));
        REQUIRE(row.size() == 15);
        const Request request = support::request_of(row);
        CHECK(refusal_source(request).empty());
        const problem::Result<Standard> result = standard_for(request);
        for (const problem::Problem& problem : result.problems()) {
            FAIL_CHECK(problem.message);
        }
        if (!result.ok()) {
            continue;
        }
        CHECK(near_abs(result->cook_floor.celsius(), std::stod(row[7]), 1e-9));
        CHECK(near_abs(result->action_line.celsius(), std::stod(row[8]), 1e-9));
        CHECK(near_abs(result->hold_floor.celsius(), std::stod(row[9]), 1e-9));
        CHECK(near_abs(result->core_at_least.celsius(), std::stod(row[10]), 1e-9));
        CHECK(near_abs(result->core_at_least_for.si(), std::stod(row[11]), 1e-9));
        CHECK(result->finish.has_value() == (row[12] != "-"));
        if (result->finish && row[12] != "-") {
            CHECK(near_abs(result->finish->core.celsius(), std::stod(row[12]), 1e-9));
            CHECK(near_abs(result->finish->hold.si(), std::stod(row[13]), 1e-9));
            CHECK_FALSE(result->finish->why.empty());
            CHECK_NOTHROW(facts::facts().source(result->finish->source));
        }
        CHECK(result->below_consumer_advice == (row[14] == "yes"));
        REQUIRE(result->kill != nullptr);
        CHECK_FALSE(result->kill->rows.empty());
        CHECK_NOTHROW(facts::facts().source(result->rule_source));
    }
}

TEST_CASE("a target just above the nearest allowed one that a refusal names is allowed") {
    for (const support::Row& row : support::rows_of("refusals.txt")) {
        INFO(row.at(0));
        Request request = support::request_of(row);
        const problem::Result<Standard> result = standard_for(request);
        const problem::Code code = result.problems().front().code;
        if (code != "target-too-low" && code != "at-risk-target-too-low") {
            continue;
        }
        const std::string hint = plain(result.problems().front().hint);
        const std::string mark = "allowed here is ";
        REQUIRE(hint.find(mark) != std::string::npos);
        request.target = units::celsius(std::stod(hint.substr(hint.find(mark) + mark.size())));
        CHECK(standard_for(request).ok());
    }
}

TEST_CASE("a target that is no number is refused") {
    Request request = request_for(*facts::facts().find_food("pork-loin"));
    request.target = units::celsius(std::stod("nan"));
    CHECK_FALSE(standard_for(request).ok());
}

TEST_CASE("an unknown kind of red meat is taken as pork") {
    Request request;
    request.ruleset = support::ruleset("ca");
    request.target = units::celsius(65);
    CHECK_FALSE(standard_for(request).ok());
    request.pork = false;
    CHECK(standard_for(request).ok());
}

TEST_CASE("after done the reading keeps the same margin above the hold floor") {
    Request request = request_for(*facts::facts().find_food("pork-loin"));
    request.target = units::celsius(66);
    CHECK(near_abs(standard_for(request)->hold_action_line.celsius(), 57.0, 1e-9));
    request.ruleset = support::ruleset("uk");
    CHECK(near_abs(standard_for(request)->hold_action_line.celsius(), 65.6, 1e-9));
}

TEST_CASE("refusals and reasons are short and in plain words") {
    for (const support::Row& row : support::rows_of("refusals.txt")) {
        const problem::Result<Standard> result = standard_for(support::request_of(row));
        const problem::Problem& problem = result.problems().front();
        INFO(problem.message, " / ", problem.hint);
        CHECK(problem.message.size() < 220);
        CHECK(problem.hint.size() < 170);
        CHECK_FALSE(problem.hint.empty());
        for (const char* jargon : {"log", "pathogen", "lethality", "core", "CFU", "pasteur", "perfringens", "HACCP"}) {
            CHECK(problem.message.find(jargon) == std::string::npos);
            CHECK(problem.hint.find(jargon) == std::string::npos);
        }
    }
}

TEST_CASE("finished over the fire by choice: to its full temperature, floors of the bath unchanged, refusals kept") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        for (const auto& rules : facts::names<facts::Ruleset>()) {
            for (const bool at_risk : {false, true}) {
                CAPTURE(kind.key);
                CAPTURE(std::string(rules.text));
                CAPTURE(at_risk);
                Request request = request_for(kind);
                request.ruleset = rules.value;
                request.at_risk = at_risk;
                request.target = units::celsius(74);
                const auto bath_alone = standard_for(request);
                request.over_fire = true;
                const auto finished = standard_for(request);
                CHECK(finished.ok() == bath_alone.ok());
                if (!finished || !bath_alone) {
                    continue;
                }
                const facts::Rule& rule = *facts::facts().find_rule(rules.value, kind.category);
                REQUIRE(finished->finish.has_value());
                CHECK(finished->finish->core >= units::celsius(74));
                CHECK(finished->finish->core >= std::min(rule.consumer_core, units::celsius(74)));
                CHECK(finished->cook_floor == bath_alone->cook_floor);
                CHECK(finished->action_line == bath_alone->action_line);
                CHECK(finished->hold_floor == bath_alone->hold_floor);
                CHECK(finished->kill == bath_alone->kill);
                // The bath goes on as far as its own kill table begins, and no target is allowed under that.
                request.target = lowest_over_fire(rule);
                CHECK(standard_for(request).ok());
                CHECK(request.target >= rule.cook_floor);
                CHECK(request.target >= finished->kill->rows.front().core);
                request.target = lowest_over_fire(rule) - units::kelvins(0.5);
                CHECK_FALSE(standard_for(request).ok());
                request.has_thermometer = false;  // nobody could tell when it is done
                request.has_wax_tell_tale = true;
                request.target = units::celsius(74);
                CHECK_FALSE(standard_for(request).ok());
            }
        }
    }
}
