// SPDX-License-Identifier: MIT
// Growth less kill of C. perfringens along a core history.
#include "safety/net_growth.hpp"

#include "safety/clocks.hpp"
#include "safety/growth.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::safety;
using support::near_abs;
using support::near_rel;
using units::celsius;
using units::History;
using units::hours;
using units::minutes;

namespace {

const facts::GrowthModel& beef() {
    return facts::facts().growth("beef");
}

/// From 10 to 54.4 C at an even pace, then at a temperature for a time.
History rise_and_hold(units::Duration rise, units::Temperature hold, units::Duration for_this_long) {
    History core;
    core.add(hours(0), celsius(10));
    core.add(rise, celsius(54.4));
    core.add(rise + minutes(1), hold);
    core.add(rise + minutes(1) + for_this_long, hold);
    return core;
}

History steady(units::Temperature t, units::Duration for_this_long) {
    History core;
    core.add(hours(0), t);
    core.add(for_this_long, t);
    return core;
}

/// The same by small steps of Euler: another way to the same number.
double by_small_steps(const facts::GrowthModel& model, double q0, const VegetativeKill& kill, const History& core) {
    const double step = 1.0;  // s
    double q = q0;
    double net = 0.0;
    for (double t = core.points.front().at.si() + step / 2.0; t < core.points.back().at.si(); t += step) {
        const units::Temperature now = core.at(units::seconds(t));
        const double rate = growth_rate(model, now) * step / 3600.0;  // log10
        net = std::max(0.0, net - kill_rate(kill, now) * step / 3600.0);
        net += rate * q / (1.0 + q);
        q *= std::pow(10.0, rate);
    }
    return net;
}

}  // namespace

TEST_CASE("kill goes by the published times") {
    // smith-evans-buck-1981, abstract: 60 C for 12 min takes about 3 log; 12 log need 2.3 h or more.
    CHECK(near_rel(kill_rate(likely_kill(), celsius(60)) * 0.2, 3.0, 1e-9));
    CHECK(near_rel(kill_rate(cautious_kill(), celsius(60)) * 2.3, 12.0, 1e-9));
    // juneja-marmer-1998 (from memory), ground beef: 21.6 min at 55 C, 1.6 min at 62.5 C; the z between them.
    const double z = 7.5 / std::log10(21.6 / 1.6);
    CHECK(near_abs(likely_kill().z_below.si(), z, 0.05));
    // The cautious kill is slower than each of these, everywhere.
    CHECK(60.0 / kill_rate(cautious_kill(), celsius(55)) > 21.6);
    CHECK(60.0 / kill_rate(cautious_kill(), celsius(57.5)) > 10.2);
    CHECK(60.0 / kill_rate(cautious_kill(), celsius(60)) > 5.2);
    CHECK(60.0 / kill_rate(cautious_kill(), celsius(62.5)) > 1.6);
    CHECK(kill_rate(cautious_kill(), celsius(54.39)) == 0.0);
    CHECK(kill_rate(likely_kill(), celsius(54.39)) == 0.0);
}

TEST_CASE("a history without heat is growth alone, one without warmth is nothing") {
    const History warm = steady(celsius(40), hours(3));
    CHECK(near_rel(net_growth(beef(), 0.0699, cautious_kill(), warm), growth_with_lag(beef(), warm, 0.0699), 1e-12));
    CHECK(net_growth(beef(), 0.0699, cautious_kill(), steady(celsius(5), hours(30))) == 0.0);
    CHECK(net_growth(beef(), 0.0699, cautious_kill(), steady(celsius(62), hours(3))) == 0.0);
    CHECK(net_growth(beef(), 0.0699, cautious_kill(), {}) == 0.0);
}

TEST_CASE("growth less kill, worked out by hand") {
    // 2 h at 46 C without a lag to speak of, then a jump to 60 C: 1 log is gone every 11.5 min.
    const double grown = growth_with_lag(beef(), steady(celsius(46), hours(2)), 0.0699);
    History core = steady(celsius(46), hours(2));
    core.add(hours(2), celsius(60));
    core.add(hours(2) + minutes(23), celsius(60));
    CHECK(near_abs(net_growth(beef(), 0.0699, cautious_kill(), core), grown - 2.0, 1e-9));
    core.add(hours(4), celsius(60));
    CHECK(net_growth(beef(), 0.0699, cautious_kill(), core) == 0.0);
    const auto undone = moment_undone(beef(), 0.0699, cautious_kill(), core, hours(2));
    REQUIRE(undone.has_value());
    CHECK(near_abs(undone->si(), 7200.0 + 690.0 * grown, 1e-3));
    // Asked for later, it is undone from then on; before anything grew, at once.
    CHECK(moment_undone(beef(), 0.0699, cautious_kill(), core, hours(3.9)) == hours(3.9));
    CHECK(moment_undone(beef(), 0.0699, cautious_kill(), core) == hours(0));
}

TEST_CASE("what a moment leaves is what grew less what died up to it, and both ends agree") {
    History core = steady(celsius(46), hours(2));
    core.add(hours(2), celsius(60));
    core.add(hours(4), celsius(60));
    const double grown = growth_with_lag(beef(), steady(celsius(46), hours(2)), 0.0699);
    const LeftOver at_done = left_over(beef(), 0.0699, cautious_kill(), core, hours(2) + minutes(11.5));
    CHECK(near_abs(at_done.log10, grown - 1.0, 1e-9));
    REQUIRE(at_done.undone.has_value());
    CHECK(near_abs(at_done.undone->si(), 7200.0 + 690.0 * grown, 1e-3));
    // Long after: nothing left, and undone at once. Beyond the end of the history: what its end leaves, never undone.
    CHECK(left_over(beef(), 0.0699, cautious_kill(), core, hours(3.9)).log10 == 0.0);
    CHECK(left_over(beef(), 0.0699, cautious_kill(), core, hours(3.9)).undone == hours(3.9));
    const LeftOver beyond = left_over(beef(), 0.0699, cautious_kill(), steady(celsius(46), hours(2)), hours(2));
    CHECK(near_abs(beyond.log10, grown, 1e-9));
    CHECK_FALSE(beyond.undone.has_value());
    // The cautious side is that of the facts.
    const LeftOver cautious = cautious_left_over(beef(), core, hours(2) + minutes(11.5));
    CHECK(cautious.log10 ==
          left_over(beef(), beef().q0_cautious, cautious_kill(), core, hours(2) + minutes(11.5)).log10);
    CHECK(cautious.undone == at_done.undone);
    CHECK(cautious_left_over(beef(), {}, hours(1)).log10 == 0.0);
}

TEST_CASE("a kill is no credit for what grows after it") {
    History core = steady(celsius(62), hours(6));
    core.add(hours(6.2), celsius(45));
    core.add(hours(7.2), celsius(45));
    History late;
    late.add(hours(6), celsius(62));
    late.add(hours(6.2), celsius(45));
    late.add(hours(7.2), celsius(45));
    const double net = net_growth(beef(), 0.0699, cautious_kill(), core);
    CHECK(net > 0.5);
    CHECK(near_rel(net, net_growth(beef(), 0.0699, cautious_kill(), late), 1e-9));
}

TEST_CASE("never undone where the bath is too cool to kill") {
    const History core = rise_and_hold(hours(4), celsius(54.3), hours(40));
    CHECK(net_growth(beef(), 0.0699, cautious_kill(), core) > 1.0);
    CHECK_FALSE(moment_undone(beef(), 0.0699, cautious_kill(), core, hours(4)).has_value());
}

TEST_CASE("small steps give the same, for each model and both sides") {
    for (const facts::GrowthModel& model : facts::facts().growth_models()) {
        for (const double rise : {1.0, 3.0, 5.5}) {
            for (const double hold : {56.0, 59.9, 63.0}) {
                INFO(model.key, " ", rise, " h, ", hold, " C");
                const History core = rise_and_hold(hours(rise), celsius(hold), minutes(25));
                const double exact = net_growth(model, model.q0_cautious, cautious_kill(), core);
                CHECK(near_abs(exact, by_small_steps(model, model.q0_cautious, cautious_kill(), core), 2e-3));
                const double likely = net_growth(model, model.q0_likely, likely_kill(), core);
                CHECK(near_abs(likely, by_small_steps(model, model.q0_likely, likely_kill(), core), 2e-3));
            }
        }
    }
}
