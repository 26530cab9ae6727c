// SPDX-License-Identifier: MIT
// After the bath fell below the hold floor: the clock, and what to do. Expectations are those of the decision table.
#include "safety/clocks.hpp"
#include "support/beef.hpp"
#include "support/courses.hpp"
#include "support/near.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::safety;
using facts::Ruleset;
using support::beef;
using support::by_hours;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::History;
using units::hours;

namespace {

double hours_below(const History& bath, const History& core) {
    return units::in_hours(measure_fall(bath, core, celsius(57), hours(0), beef()).below_floor);
}

}  // namespace

TEST_CASE("what to do, by clock, growth and depth") {
    struct Case {
        double below_floor;
        double below_50;
        double growth;
        int times;
        Ruleset ruleset;
        FallAction action;
    };
    using enum FallAction;
    const Case cases[] = {
        {0.0, 0.0, 0.0, 0, support::ruleset("us"), none},
        {0.1, 0.0, 0.0, 1, support::ruleset("us"), finish_and_eat_next},
        {2.0, 0.0, 0.99, 1, support::ruleset("us"), finish_and_eat_next},
        {2.01, 0.0, 0.5, 1, support::ruleset("us"), finish_and_eat_now},
        {4.0, 1.99, 0.99, 1, support::ruleset("us"), finish_and_eat_now},
        // The cards say "under it for 2 h": the 2 h themselves are too long.
        {4.0, 2.0, 0.99, 1, support::ruleset("us"), throw_away},
        {4.01, 0.0, 0.0, 1, support::ruleset("us"), throw_away},
        {0.5, 0.0, 1.0, 1, support::ruleset("us"), throw_away},
        {3.0, 0.0, 1.2, 1, support::ruleset("us"), throw_away},
        {2.5, 2.01, 0.1, 1, support::ruleset("us"), throw_away},
        {1.9, 0.0, 0.1, 3, support::ruleset("us"), finish_and_eat_next},
        {3.0, 1.0, 0.5, 1, support::ruleset("au-nz"), finish_and_eat_now},
        {4.5, 1.0, 0.5, 1, support::ruleset("au-nz"), throw_away},
        {3.0, 1.0, 0.5, 1, support::ruleset("ca"), finish_and_eat_now},
        {1.9, 0.0, 0.1, 1, support::ruleset("uk"), finish_and_eat_next},
        {2.0, 0.0, 0.1, 1, support::ruleset("uk"), throw_away},
        {3.0, 0.0, 0.1, 1, support::ruleset("uk"), throw_away},
        {0.2, 0.0, 0.0, 2, support::ruleset("uk"), throw_away},
        {0.0, 0.0, 0.0, 0, support::ruleset("uk"), none},
        {0.0, 0.0, 0.99, 0, support::ruleset("us"), none},
        {0.0, 0.0, 1.0, 0, support::ruleset("us"), throw_away},
        {0.0, 0.0, 4.8, 0, support::ruleset("au-nz"), throw_away},
    };
    for (const Case& one : cases) {
        INFO(one.below_floor, " h, ", one.below_50, " h deep, growth ", one.growth, ", ", one.times, " times, ",
             facts::to_name(one.ruleset));
        const Fall fall{hours(one.below_floor), hours(one.below_50), one.growth, one.times};
        CHECK(decide(fall, fall_rules(one.ruleset, false)).action == one.action);
    }
    Fall unknown{hours(1), hours(0), std::stod("nan"), 1};
    CHECK(decide(unknown, fall_rules(support::ruleset("us"), false)).action == FallAction::throw_away);
}

TEST_CASE("the clock starts when the bath falls below the floor and stops when the core is back above it") {
    const History bath = by_hours({{0, 60}, {3, 54}, {3, 62}, {6, 60}});
    // Below from 1.5 h; topped up at 3 h, but the core comes back to 57 C only at 4 h.
    const History core = by_hours({{0, 59}, {3, 55}, {4, 57}, {6, 60}});
    CHECK(near_rel(hours_below(bath, core), 2.5, 1e-12));
    // A core that never came back: the clock runs to the end.
    CHECK(near_rel(hours_below(bath, by_hours({{0, 59}, {3, 55}, {6, 56}})), 4.5, 1e-12));
    // A core that never fell: the clock stops with the top-up.
    CHECK(near_rel(hours_below(bath, by_hours({{0, 59}, {6, 58}})), 1.5, 1e-12));
}

TEST_CASE("a written core below the floor starts the clock, and the bath alone does not stop it") {
    const History bath = by_hours({{0, 60}, {6, 60}});
    const History core = by_hours({{0, 60}, {2, 60}, {4, 50}, {5, 60}, {6, 60}});
    const auto below = [&](const History& written) {
        return units::in_hours(measure_fall(bath, core, celsius(57), hours(0), beef(), written).below_floor);
    };
    CHECK(below({}) == 0.0);
    CHECK(near_rel(below(core), 4.7 - 2.6, 1e-12));
}

TEST_CASE("later falls add to the same clock and are counted") {
    const History bath =
        by_hours({{0, 60}, {1, 60}, {1, 56}, {2, 56}, {2, 60}, {5, 60}, {5, 56}, {5.5, 56}, {5.5, 60}, {8, 60}});
    const Fall fall = measure_fall(bath, by_hours({{0, 60}, {8, 60}}), celsius(57), hours(0), beef());
    CHECK(near_rel(units::in_hours(fall.below_floor), 1.5, 1e-12));
    CHECK(fall.times == 2);
    CHECK(decide(fall, fall_rules(support::ruleset("us"), false)).action == FallAction::finish_and_eat_next);
    CHECK(decide(fall, fall_rules(support::ruleset("uk"), false)).action == FallAction::throw_away);
}

TEST_CASE("no fall: nothing counted, nothing grows") {
    const Fall fall =
        measure_fall(by_hours({{0, 60}, {8, 57}}), by_hours({{0, 60}, {8, 57}}), celsius(57), hours(0), beef());
    CHECK(fall.below_floor == hours(0));
    CHECK(fall.times == 0);
    CHECK(fall.growth == 0.0);
    CHECK(decide(fall, fall_rules(support::ruleset("uk"), false)).action == FallAction::none);
}

TEST_CASE("what was before the given moment does not count, what is under way does") {
    const History bath = by_hours({{0, 50}, {2, 50}, {4, 50}, {4, 60}, {6, 60}});
    const Fall fall = measure_fall(bath, by_hours({{0, 60}, {6, 60}}), celsius(57), hours(2), beef());
    CHECK(near_rel(units::in_hours(fall.below_floor), 2.0, 1e-12));
}

TEST_CASE("growth is that of the side on which more grows, from the first fall on") {
    const History warm = by_hours({{0, 58}, {6, 58}});
    const History deep = by_hours({{0, 60}, {1, 60}, {1, 46}, {3, 46}});
    const Fall cold_bath = measure_fall(deep, warm, celsius(57), hours(0), beef());
    CHECK(near_abs(cold_bath.growth, growth_with_lag(beef(), by_hours({{1, 46}, {6, 46}}), beef().q0_cautious), 1e-12));
    const Fall cold_core =
        measure_fall(by_hours({{0, 56}, {3, 56}}), by_hours({{0, 46}, {3, 46}}), celsius(57), hours(0), beef());
    CHECK(near_abs(cold_core.growth, growth_with_lag(beef(), by_hours({{0, 46}, {3, 46}}), beef().q0_cautious), 1e-12));
}

TEST_CASE("let down to 48 C overnight: hours below, growth, and away with it") {
    // 61 C at the last reading, down to 48 C nine hours later, the core on its heels.
    const History bath = by_hours({{0, 61}, {9, 48}});
    const History core = by_hours({{0, 61}, {9, 48.5}});
    const Fall fall = measure_fall(bath, core, celsius(54.4), hours(0), beef());
    CHECK(near_abs(units::in_hours(fall.below_floor), 9.0 * 6.4 / 13.0, 1e-9));
    CHECK(units::in_hours(fall.below_50) > 1.0);
    CHECK(fall.growth > 1.0);
    CHECK(decide(fall, fall_rules(support::ruleset("us"), false)).action == FallAction::throw_away);
}
