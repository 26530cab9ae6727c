// SPDX-License-Identifier: MIT
// Steaks and food that is kept hot: what is asked of them, and every condition that refuses them.
#include "safety/finish.hpp"
#include "safety/standard.hpp"
#include "safety/thawing.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <string>

using namespace holdwater;
using namespace holdwater::safety;
using units::celsius;

namespace {

Request steak() {
    Request request = request_for(*facts::facts().find_food("beef-top-sirloin"));
    request.use = facts::Use::steak;
    request.target = celsius(56);
    request.thickness = units::millimetres(30);
    request.ruleset = support::ruleset("us");
    return request;
}

Request kept_hot(const char* kind, double start, const char* rules = "us") {
    Request request = request_for(*facts::facts().find_food(kind));
    request.use = facts::Use::keep_hot;
    request.start = request.target = celsius(start);
    request.ruleset = support::ruleset(rules);
    return request;
}

std::string code_of(const Request& request) {
    const auto standard = standard_for(request);
    return standard ? "" : std::string(standard.problems().front().code.text());
}

}  // namespace

TEST_CASE("nothing is asked of the core of a steak, and its floors are those of red meat") {
    const auto standard = standard_for(steak());
    REQUIRE(standard.ok());
    REQUIRE(standard->sear);
    CHECK(standard->sear->surface == celsius(63));
    CHECK(standard->kill->none_asked);
    CHECK_FALSE(standard->finish.has_value());
    Request roast = steak();
    roast.use = facts::Use::cook;
    const auto cooked = standard_for(roast);
    REQUIRE(cooked.ok());
    CHECK_FALSE(cooked->sear.has_value());
    CHECK(standard->cook_floor == cooked->cook_floor);
    CHECK(standard->hold_floor > cooked->hold_floor);  // only roasts are held from their lowest row on
    CHECK(standard->hold_floor == celsius(57.2));
    CHECK(standard->growth == cooked->growth);
    CHECK(standard->below_consumer_advice);
}

TEST_CASE("every condition of the steak rule refuses by itself") {
    struct Row {
        const char* what;
        std::function<void(Request&)> change;
        const char* code;
    };
    const Row rows[] = {
        {"as it is", [](Request&) {}, ""},
        {"another country", [](Request& r) { r.ruleset = support::ruleset("uk"); }, "steak-refused"},
        {"another country", [](Request& r) { r.ruleset = support::ruleset("ca"); }, "steak-refused"},
        {"not of beef", [](Request& r) { r.beef = false; }, "steak-refused"},
        {"tied", [](Request& r) { r.cut = facts::Cut::tied; }, "steak-refused"},
        {"tenderised", [](Request& r) { r.cut = facts::Cut::tenderised; }, "steak-refused"},
        {"injected", [](Request& r) { r.cut = facts::Cut::injected; }, "steak-refused"},
        {"minced", [](Request& r) { r.cut = facts::Cut::minced; }, "steak-refused"},
        {"at risk", [](Request& r) { r.at_risk = true; }, "steak-refused"},
        {"no thermometer", [](Request& r) { r.has_thermometer = false; }, "steak-refused"},
        {"40 mm", [](Request& r) { r.thickness = units::millimetres(40); }, ""},
        {"41 mm", [](Request& r) { r.thickness = units::millimetres(41); }, "steak-refused"},
        {"thickness not known", [](Request& r) { r.thickness.reset(); }, "steak-refused"},
        {"round", [](Request& r) { r.flat = false; }, "steak-refused"},
        {"below the lowest floor", [](Request& r) { r.target = celsius(54); }, "target-too-low"},
    };
    for (const Row& row : rows) {
        INFO(row.what);
        Request request = steak();
        row.change(request);
        CHECK(code_of(request) == row.code);
        CHECK(refusal_source(request).empty() == std::string(row.code).empty());
    }
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        INFO(kind.key);
        Request request = steak();
        request.category = kind.category;
        request.beef = kind.beef;
        CHECK((code_of(request).empty() == kind.beef));
    }
}

TEST_CASE("what is kept hot stays over the floor of its country, and nothing else is asked") {
    struct Row {
        const char* rules;
        double floor;
    };
    for (const Row& row : {Row{"us", 57.2}, Row{"uk", 63.0}, Row{"au-nz", 60.0}, Row{"ca", 60.0}}) {
        INFO(row.rules);
        const auto standard = standard_for(kept_hot("rice-cooked", 75, row.rules));
        REQUIRE(standard.ok());
        CHECK(standard->kept_hot);
        CHECK(standard->hold_floor == celsius(row.floor));
        CHECK(standard->cook_floor == standard->hold_floor);
        CHECK(standard->hold_action_line > standard->hold_floor);
        CHECK(standard->core_at_least == standard->hold_floor);
        CHECK(standard->kill->none_asked);
        CHECK_FALSE(standard->finish.has_value());
        CHECK_FALSE(standard->below_consumer_advice);
        // Over the floor by what its own temperature may be off.
        CHECK(code_of(kept_hot("rice-cooked", row.floor + 2.01, row.rules)).empty());
        CHECK(code_of(kept_hot("rice-cooked", row.floor + 1.9, row.rules)) == "keep-hot-refused");
    }
}

TEST_CASE("cold food is not reheated in the box: over the fire first, to the core that the country asks") {
    struct Row {
        const char* rules;
        const char* core;
    };
    for (const Row& row : {Row{"us", "74"}, Row{"uk", "70"}, Row{"au-nz", "75"}, Row{"ca", "74"}}) {
        INFO(row.rules);
        const auto standard = standard_for(kept_hot("stew", 5, row.rules));
        REQUIRE_FALSE(standard.ok());
        const problem::Problem& refused = standard.problems().front();
        CHECK(refused.code == problem::Code("keep-hot-refused"));
        CHECK(refused.message.find(row.core) != std::string::npos);
        CHECK(refused.hint.find(row.core) != std::string::npos);
        CHECK(refused.hint.find("over the fire first") != std::string::npos);
    }
    Request blind = kept_hot("stew", 80);
    blind.has_thermometer = false;
    CHECK(code_of(blind) == "no-thermometer-refused");
    // Roots that were boiled through, and eggs: only to be kept hot.
    CHECK(code_of(kept_hot("potato", 80)).empty());
    CHECK(code_of(kept_hot("eggs", 80)).empty());
}

TEST_CASE("thawing takes longer for a heavier piece, and no figure is made up for one that is heavier than any read") {
    CHECK(thawing_of(units::kilograms(0.3)).in_water == units::hours(1));
    CHECK(thawing_of(units::kilograms(1.2)).in_water == units::hours(3));
    CHECK_FALSE(thawing_of(units::kilograms(2.5)).in_water.has_value());
    CHECK(thawing_of(units::kilograms(0.3)).in_the_cold == units::hours(24));
    CHECK(thawing_of(units::kilograms(2.5)).in_the_cold == units::hours(48));
    CHECK(thawing_of(units::kilograms(1.2)).change == units::minutes(30));
}
