// SPDX-License-Identifier: MIT
// Laws of the safety side over grids: what must hold whatever the numbers are.
#include "safety/clocks.hpp"
#include "safety/growth.hpp"
#include "safety/kill.hpp"
#include "safety/standard.hpp"
#include "support/rulesets.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::safety;
using units::celsius;
using units::History;
using units::hours;
using units::kelvins;

namespace {

/// A cold piece in a bath, as one decay: near enough to the real thing for laws.
History warming(double bath, double time_constant_h, double end_h) {
    History core;
    double rest = bath - 4.0;
    constexpr int steps = 200;
    const double decay = std::exp(-end_h / steps / time_constant_h);
    for (int i = 0; i <= steps; ++i) {
        core.add(hours(end_h * i / steps), celsius(bath - rest));
        rest *= decay;
    }
    return core;
}

History raised(History history, double by) {
    for (History::Point& point : history.points) {
        point.value = point.value + kelvins(by);
    }
    return history;
}

}  // namespace

TEST_CASE("more time never kills less, and hotter is never slower") {
    for (const facts::KillStandard& standard : facts::facts().kill_standards()) {
        INFO(standard.key);
        for (const double bath : {54.0, 55.0, 57.5, 60.0, 62.5, 65.0, 71.0, 82.0}) {
            double before = -1.0;
            for (const double end : {1.0, 2.0, 4.0, 8.0, 16.0}) {
                const History core = warming(bath, 1.0, end);
                const double fraction = kill_fraction(standard, core);
                CHECK(fraction >= before * (1 - 1e-2));  // the same curve in coarser steps
                before = fraction;
                CHECK(kill_fraction(standard, raised(core, 0.5)) >= fraction);
                const auto met = moment_met(standard, core);
                const auto hotter = moment_met(standard, raised(core, 0.5));
                CHECK(met.has_value() == (fraction >= 1.0));
                if (met) {
                    REQUIRE(hotter.has_value());
                    CHECK(*hotter <= *met);
                    const auto twice = moment_met(standard, core, 2.0);
                    CHECK((!twice || *twice > *met));
                }
            }
        }
    }
}

TEST_CASE("a longer history never kills less: exactly, on the same points") {
    const facts::KillStandard& standard = facts::facts().kill_standard("us-red-meat-6.5");
    const History whole = warming(58.0, 1.0, 8.0);
    History part;
    double before = 0.0;
    for (const History::Point& point : whole.points) {
        part.points.push_back(point);
        const double fraction = kill_fraction(standard, part);
        CHECK(fraction >= before);
        before = fraction;
    }
}

TEST_CASE("hold times fall with temperature, in small steps") {
    for (const facts::KillStandard& standard : facts::facts().kill_standards()) {
        INFO(standard.key);
        units::Duration before = hours(1000);
        for (int i = 5000; i < 9000; ++i) {
            if (const auto hold = hold_time(standard, celsius(i / 100.0))) {
                CHECK(*hold <= before);
                before = *hold;
            }
        }
    }
}

TEST_CASE("uk is never looser than us: kill, floors, clocks") {
    const facts::Facts& facts = facts::facts();
    const facts::KillStandard& uk = facts.kill_standard("uk-70-2min");
    for (const char* key : {"us-red-meat-6.5", "us-red-meat-7"}) {
        INFO(key);
        const facts::KillStandard& us = facts.kill_standard(key);
        for (int i = 5400; i <= 8500; ++i) {
            const auto hold = hold_time(uk, celsius(i / 100.0));
            const auto us_hold = hold_time(us, celsius(i / 100.0));
            if (hold && i < 8000) {
                REQUIRE(us_hold.has_value());
                CHECK(*hold >= *us_hold);
            }
        }
    }
    for (const facts::Category category :
         {facts::Category::red_meat, facts::Category::poultry, facts::Category::fish}) {
        for (double target = 54.0; target < 80.0; target += 0.5) {
            for (const bool at_risk : {false, true}) {
                Request request;
                request.category = category;
                request.target = celsius(target);
                request.at_risk = at_risk;
                const auto us_standard = standard_for(request);
                request.ruleset = support::ruleset("uk");
                const auto uk_standard = standard_for(request);
                if (!us_standard.ok() || !uk_standard.ok()) {
                    continue;
                }
                CHECK(uk_standard->cook_floor >= us_standard->cook_floor);
                CHECK(uk_standard->hold_floor >= us_standard->hold_floor);
                CHECK(uk_standard->hold_action_line >= us_standard->hold_action_line);
            }
        }
    }
    for (double below = 0.0; below < 6.0; below += 0.1) {
        for (double growth = 0.0; growth < 1.5; growth += 0.25) {
            const Fall fall{hours(below), hours(below / 2), growth, 1};
            CHECK(decide(fall, fall_rules(support::ruleset("uk"), false)).action >=
                  decide(fall, fall_rules(support::ruleset("us"), false)).action);
        }
    }
}

TEST_CASE("eaters at risk, no thermometer and a riskier cut never make a standard looser") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        for (const auto& rules : facts::names<facts::Ruleset>()) {
            for (double target = 50.0; target < 80.0; target += 0.7) {
                Request plain = request_for(kind);
                plain.ruleset = rules.value;
                plain.target = celsius(target);
                const auto base = standard_for(plain);
                const auto stricter = [&](Request request) {
                    INFO(kind.key, " ", rules.text, " ", target);
                    const auto other = standard_for(request);
                    if (!base.ok()) {
                        CHECK((!other.ok() || request.cut == facts::Cut::minced));
                        return;
                    }
                    if (!other.ok()) {
                        return;
                    }
                    CHECK(other->cook_floor >= base->cook_floor);
                    CHECK(other->hold_floor >= base->hold_floor);
                    CHECK(other->action_line >= base->action_line);
                    if (!other->finish) {
                        CHECK_FALSE(base->finish.has_value());
                        CHECK(other->core_at_least >= base->core_at_least);
                        CHECK(other->core_at_least_for >= base->core_at_least_for);
                    } else if (base->finish) {
                        CHECK(other->finish->core >= base->finish->core);
                        CHECK(other->finish->hold >= base->finish->hold);
                    }
                };
                Request request = plain;
                request.at_risk = true;
                stricter(request);
                request = plain;
                request.has_thermometer = false;
                request.has_wax_tell_tale = true;
                stricter(request);
                request = plain;
                request.cut = facts::Cut::minced;
                stricter(request);
            }
        }
    }
}

TEST_CASE("what is allowed at one target is allowed at any higher one") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        for (const auto& rules : facts::names<facts::Ruleset>()) {
            for (const auto& cut : facts::names<facts::Cut>()) {
                for (const bool at_risk : {false, true}) {
                    bool allowed = false;
                    for (double target = 40.0; target < 80.0; target += 0.25) {
                        Request request = request_for(kind);
                        request.ruleset = rules.value;
                        request.cut = cut.value;
                        request.at_risk = at_risk;
                        request.target = celsius(target);
                        const bool ok = standard_for(request).ok();
                        INFO(kind.key, " ", rules.text, " ", cut.text, " ", target);
                        CHECK((ok || !allowed));
                        allowed = allowed || ok;
                        // Nothing at all is served from a bath aimed at 54 C or less.
                        CHECK((!ok || target > 54.0));
                    }
                }
            }
        }
    }
}

TEST_CASE("only whole red meat, poultry, fish and farmed game are served from the bath alone") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        for (const auto& rules : facts::names<facts::Ruleset>()) {
            for (const auto& cut : facts::names<facts::Cut>()) {
                Request request = request_for(kind);
                request.ruleset = rules.value;
                request.cut = cut.value;
                request.target = celsius(79);
                const auto standard = standard_for(request);
                INFO(kind.key, " ", rules.text, " ", cut.text);
                const bool whole = cut.value == facts::Cut::intact || cut.value == facts::Cut::tied;
                const bool plain_kind =
                    kind.category == facts::Category::red_meat || kind.category == facts::Category::poultry ||
                    kind.category == facts::Category::farmed_game || kind.category == facts::Category::fish;
                if (!whole || !plain_kind) {
                    CHECK((!standard.ok() || standard->finish.has_value()));
                } else {
                    CHECK(standard.ok());
                }
            }
        }
    }
}

TEST_CASE("people at risk: whole red meat and fish reach 63 C, everything else is finished to 74 C or refused") {
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        for (const auto& rules : facts::names<facts::Ruleset>()) {
            for (const auto& cut : facts::names<facts::Cut>()) {
                for (double target = 54.0; target < 80.0; target += 0.5) {
                    Request request = request_for(kind);
                    request.ruleset = rules.value;
                    request.cut = cut.value;
                    request.target = celsius(target);
                    request.at_risk = true;
                    const auto standard = standard_for(request);
                    if (!standard.ok()) {
                        continue;
                    }
                    INFO(kind.key, " ", rules.text, " ", cut.text, " ", target);
                    if (standard->finish) {
                        CHECK(standard->finish->core >= celsius(74));
                    } else {
                        CHECK((kind.category == facts::Category::red_meat || kind.category == facts::Category::fish));
                        CHECK(standard->core_at_least >= celsius(63));
                        const bool three_minutes = standard->core_at_least_for >= units::minutes(3);
                        CHECK((kind.category == facts::Category::fish || three_minutes));
                    }
                    request.has_thermometer = false;
                    CHECK_FALSE(standard_for(request).ok());
                }
            }
        }
    }
}

TEST_CASE("cautious is never less strict than likely, and lag never grows more than no lag") {
    for (const facts::GrowthModel& model : facts::facts().growth_models()) {
        INFO(model.key);
        for (const double bath : {20.0, 35.0, 46.0, 50.0, 58.0, 65.0}) {
            for (const double constant : {0.3, 1.0, 3.0}) {
                const History core = warming(bath, constant, 8.0);
                const double likely = growth_with_lag(model, core, model.q0_likely);
                const double cautious = growth_with_lag(model, core, model.q0_cautious);
                CHECK(likely <= cautious);
                CHECK(cautious <= growth_without_lag(model, core) + 1e-12);
                CHECK(likely >= 0.0);
            }
        }
    }
}

TEST_CASE("a top-up never shortens a clock, and never makes a verdict milder than the same fall without its rest") {
    const facts::GrowthModel& model = facts::facts().growth("pork");
    const units::Temperature floor = celsius(57);
    for (double slope = 0.5; slope < 4.0; slope += 0.5) {
        for (double top_up = 0.5; top_up < 8.0; top_up += 0.5) {
            History bath;
            History core;
            bath.add(hours(0), celsius(60));
            core.add(hours(0), celsius(59));
            const double fallen = 60 - slope * top_up;
            bath.add(hours(top_up), celsius(fallen));
            core.add(hours(top_up), celsius(fallen + 0.5));
            const Fall before = measure_fall(bath, core, floor, hours(0), model);
            // Topped up by 8 K; the core follows within an hour and a half.
            bath.add(hours(top_up), celsius(fallen + 8));
            bath.add(hours(10), celsius(fallen + 8));
            core.add(hours(top_up + 1.5), celsius(fallen + 7.5));
            core.add(hours(10), celsius(fallen + 7.5));
            const Fall after = measure_fall(bath, core, floor, hours(0), model);
            INFO(slope, " K/h, top-up at ", top_up, " h");
            CHECK(after.below_floor >= before.below_floor);
            CHECK(after.below_50 >= before.below_50);
            CHECK(after.growth >= before.growth - 1e-12);
            const FallRules us = fall_rules(support::ruleset("us"), false);
            CHECK(decide(after, us).action >= decide(before, us).action);
        }
    }
}

TEST_CASE("longer, deeper or more growth never makes a verdict milder") {
    for (const auto& ruleset : facts::names<facts::Ruleset>()) {
        for (const bool at_risk : {false, true}) {
            const FallRules rules = fall_rules(ruleset.value, at_risk);
            const auto action = [&](double below, double deep, double growth, int times) {
                return decide({hours(below), hours(deep), growth, times}, rules).action;
            };
            for (double below = 0.0; below < 5.0; below += 0.25) {
                for (double deep = 0.0; deep <= below; deep += 0.25) {
                    for (double growth = 0.0; growth < 1.3; growth += 0.1) {
                        const FallAction now = action(below, deep, growth, 1);
                        CHECK(action(below + 0.3, deep, growth, 1) >= now);
                        CHECK(action(below + 0.3, deep + 0.3, growth, 1) >= now);
                        CHECK(action(below, deep, growth + 0.2, 1) >= now);
                        CHECK(action(below, deep, growth, 2) >= now);
                        // People at risk never read the milder thing, nor anything that others must eat at once.
                        CHECK(decide({hours(below), hours(deep), growth, 1}, fall_rules(ruleset.value, true)).action >=
                              now);
                        CHECK((!at_risk || now != FallAction::finish_and_eat_now));
                    }
                }
            }
        }
    }
}
