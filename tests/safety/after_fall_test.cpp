// SPDX-License-Identifier: MIT
// The tables of the one decision: what cards print of it is what it decides.
#include "safety/after_fall.hpp"

#include "safety/growth.hpp"
#include "support/near.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::safety;
using facts::Ruleset;
using support::near_abs;
using units::celsius;
using units::Duration;
using units::History;
using units::hours;
using units::minutes;

namespace {

std::vector<FallRules> all_rules() {
    std::vector<FallRules> all;
    for (const auto& ruleset : facts::names<Ruleset>()) {
        all.push_back(fall_rules(ruleset.value, false));
        all.push_back(fall_rules(ruleset.value, true));
    }
    return all;
}

FallAction by_time(const FallRules& rules, Duration below, int times = 1) {
    return decide({below, Duration{0}, 0.0, times}, rules).action;
}

std::vector<const facts::GrowthModel*> every_food() {
    std::vector<const facts::GrowthModel*> models;
    for (const facts::GrowthModel& model : facts::facts().growth_models()) {
        models.push_back(&model);
    }
    return models;
}

/// The box of the hand example: from the floor down at so many K an hour.
History straight(double from, double to, double per_hour) {
    History fall;
    for (int i = 0; i <= 50; ++i) {
        const double t = from + (to - from) * i / 50.0;
        fall.add(hours((from - t) / per_hour), celsius(t));
    }
    return fall;
}

}  // namespace

TEST_CASE("every row of the table is what the decision says of the times in it, without gaps") {
    for (const FallRules& rules : all_rules()) {
        const std::vector<FallRow> table = rows(rules);
        REQUIRE(table.size() >= 2);
        CHECK(table.front().from == Duration{0});
        CHECK_FALSE(table.back().to.has_value());
        for (std::size_t i = 0; i < table.size(); ++i) {
            const FallRow& row = table[i];
            const Duration a_little = minutes(1);
            CHECK(by_time(rules, row.from + a_little) == row.action);
            if (i > 0) {
                CHECK(row.from == *table[i - 1].to);
                CHECK(row.from_counts != table[i - 1].to_counts);
                CHECK(row.action > table[i - 1].action);
            }
            if (row.to) {
                CHECK((by_time(rules, *row.to) == row.action) == row.to_counts);
                CHECK(by_time(rules, *row.to - a_little) == row.action);
            }
            if (row.from_counts) {
                CHECK(by_time(rules, row.from) == row.action);
            }
            if (row.again) {
                CHECK(by_time(rules, a_little, 2) == row.action);
            }
        }
    }
}

TEST_CASE("who eats and whose rules are part of the decision") {
    using enum FallAction;
    const auto at = [](double below, Ruleset ruleset, bool at_risk) {
        return decide({hours(below), hours(0), 0.0, 1}, fall_rules(ruleset, at_risk));
    };
    CHECK(at(3.0, support::ruleset("us"), false).action == finish_and_eat_now);
    CHECK(at(3.0, support::ruleset("us"), true).action == throw_away);
    CHECK(at(3.0, support::ruleset("us"), true).figure == "fall.at-risk");
    CHECK(at(2.0, support::ruleset("us"), true).action == finish_and_eat_next);
    CHECK(at(2.0, support::ruleset("uk"), false).action == throw_away);
    CHECK(at(2.0, support::ruleset("uk"), false).figure == "fall.uk");
    CHECK(at(1.9, support::ruleset("uk"), true).action == finish_and_eat_next);
    CHECK(at(0.0, support::ruleset("uk"), true).figure.empty());
    CHECK(decide({hours(1), hours(0), 0.0, 2}, fall_rules(support::ruleset("uk"), false)).action == throw_away);
    CHECK(decide({hours(1), hours(0), 0.0, 2}, fall_rules(support::ruleset("us"), false)).action ==
          finish_and_eat_next);
}

TEST_CASE("the steps of cold baths leave nothing out") {
    for (const FallRules& rules : all_rules()) {
        for (const facts::GrowthModel* model : every_food()) {
            INFO(model->key);
            const std::vector<ColdBath> steps = cold_baths(rules, {model});
            for (std::size_t i = 1; i < steps.size(); ++i) {
                CHECK(steps[i].lowest < steps[i - 1].lowest);
                CHECK(steps[i].longest < steps[i - 1].longest);
            }
            for (double bath = 54.0; bath >= 15.0; bath -= 0.25) {
                for (double time = 0.1; time < 5.0; time += 0.1) {
                    Fall fall{hours(time), bath < rules.deep.celsius() ? hours(time) : hours(0), 0.0, 1};
                    fall.growth = lagged_growth(growth_rate(*model, celsius(bath)) * time, model->q0_cautious);
                    bool named = false;
                    for (const ColdBath& step : steps) {
                        named = named || (celsius(bath) <= step.lowest && hours(time) >= step.longest);
                    }
                    const FallAction advised = named ? FallAction::throw_away : by_time(rules, hours(time));
                    CAPTURE(bath);
                    CAPTURE(time);
                    CHECK(advised >= decide(fall, rules).action);
                }
            }
        }
    }
}

TEST_CASE("a bath just under the floor is not thrown away sooner than the clock says") {
    // The mild end of what can grow within the clock is not joined to the fastest growth there is.
    const FallRules rules = fall_rules(support::ruleset("us"), false);
    const facts::GrowthModel& beef = facts::facts().growth("beef");
    const std::vector<ColdBath> steps = cold_baths(rules, {&beef});
    REQUIRE(steps.size() == 2);
    CHECK(steps.front().longest > *fastest_growth(beef, rules.growth, beef.q0_cautious, celsius(50)) * 1.2);
    CHECK(steps.back().lowest == rules.deep);
}

TEST_CASE("a deeper or longer fall, or a slower box, never has the milder worst") {
    const std::vector<const facts::GrowthModel*> beef{&facts::facts().growth("beef")};
    const FallRules rules = fall_rules(support::ruleset("us"), false);
    for (const double rate : {0.4, 0.8, 1.6, 3.0}) {
        FallAction before = FallAction::none;
        for (double lowest = 54.0; lowest > 44.0; lowest -= 0.5) {
            const Fall slow = worst_fall(straight(54.4, lowest, rate), hours(8), beef);
            const Fall fast = worst_fall(straight(54.4, lowest, 1.2 * rate), hours(8), beef);
            CHECK(slow.below_floor >= fast.below_floor);
            CHECK(slow.growth >= fast.growth);
            CHECK(decide(slow, rules).action >= before);
            before = decide(slow, rules).action;
            Fall shorter;
            for (double since = 0.5; since < 9.0; since += 0.5) {
                const Fall longer = worst_fall(straight(54.4, lowest, rate), hours(since), beef);
                CHECK(longer.below_floor <= hours(since));
                CHECK(longer.below_floor >= shorter.below_floor);
                CHECK(longer.below_50 >= shorter.below_50 - units::seconds(1e-6));
                CHECK(longer.growth >= shorter.growth);
                // Nothing known but the time is worse than anything that was seen.
                const Fall unknown = worst_fall({}, hours(since), beef);
                CHECK(decide(unknown, rules).action >= decide(longer, rules).action);
                CHECK(unknown.growth >= longer.growth - 1e-12);
                shorter = longer;
            }
        }
    }
}

TEST_CASE("of a fall only its last part is later than the last good reading") {
    const std::vector<const facts::GrowthModel*> beef{&facts::facts().growth("beef")};
    const History fall = straight(54.4, 48.4, 1.0);
    CHECK(near_abs(units::in_hours(worst_fall(fall, hours(8), beef).below_floor), 6.0, 1e-9));
    CHECK(near_abs(units::in_hours(worst_fall(fall, hours(2), beef).below_floor), 2.0, 1e-9));
    CHECK(near_abs(units::in_hours(worst_fall(fall, hours(8), beef).below_50), 1.6, 1e-9));
    CHECK(near_abs(units::in_hours(worst_fall(fall, hours(1), beef).below_50), 1.0, 1e-9));
}
