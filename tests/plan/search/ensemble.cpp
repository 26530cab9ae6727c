// SPDX-License-Identifier: MIT
// Sampling: the promise rests on 1,024 points and eight shifts of them, and says how much that leaves open.
#include "plan/search/ensemble.hpp"

#include "facts/facts.hpp"
#include "plan/search/parallel.hpp"
#include "plan/search/scenario_result.hpp"
#include "support/near.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <atomic>
#include <cmath>
#include <set>
#include <stdexcept>
#include <vector>

using namespace holdwater;
using support::near_abs;

TEST_CASE("a promise rests on 1,024 points, eight times shifted") {
    CHECK(plan::full_draw().points == 1024);
    CHECK(plan::full_draw().shifts == 8);
}

TEST_CASE("each shift fills the spreads evenly and differs from the others") {
    const auto all = plan::draw_scenarios(512, 4);
    REQUIRE(all.size() == 2048);
    const auto plain = plan::draw_scenarios(512);
    std::set<double> first;
    for (std::size_t shift = 0; shift < 4; ++shift) {
        double litres = 0.0;
        double late = 0.0;
        for (std::size_t i = 0; i < 512; ++i) {
            litres += all[shift * 512 + i].litres / 512.0;
            late += all[shift * 512 + i].late / 512.0;
        }
        CHECK(near_abs(litres, 1.0, 0.002));
        CHECK(near_abs(late, 0.5, 0.005));
        first.insert(all[shift * 512].loss);
    }
    CHECK(first.size() == 4);
    CHECK(all[17].loss == plain[17].loss);  // the first shift is the set as it is
}

TEST_CASE("1,024 and 8,192 scenarios agree within the stated sampling error, for all that the cards print") {
    for (const char* name : {"frosty-weekend", "paddling-day", "class-day"}) {
        CAPTURE(name);
        const trip::Trip trip = support::demo_trip(name);
        const auto setup = plan::set_up(trip);
        REQUIRE(setup.ok());
        const plan::Ensemble search(*setup, {128, 1});
        const auto schedule = plan::make_schedule(search);
        REQUIRE(schedule.has_value());
        const plan::Ensemble few(*setup, {1024, 1});
        const plan::Ensemble many(*setup, {1024, 8});
        const auto in_few = plan::simulate(few, *schedule);
        const auto in_many = plan::simulate(many, *schedule);
        // What never comes about comes after all that does.
        const auto value = [](const auto& of) {
            if constexpr (requires { of.value(); }) {
                return of.value_or(units::Duration{1e9});
            } else {
                return of;
            }
        };
        const auto agree = [&](auto member) {
            using Q = decltype(value(in_few.front().foods[0].*member));
            std::vector<Q> a;
            std::vector<Q> b;
            for (const auto& one : in_few) {
                a.push_back(value(one.foods[0].*member));
            }
            for (const auto& one : in_many) {
                b.push_back(value(one.foods[0].*member));
            }
            const auto x = few.interval(a);
            const auto y = many.interval(b);
            CHECK(x.error.si() == 0.0);  // one set knows nothing of its error
            // The error is half of the range of eight sets, one of which is the few: twice it is sure to cover.
            CHECK(std::abs((x.low - y.low).si()) <= 2.0 * y.error.si() + 1e-12);
            CHECK(std::abs((x.likely - y.likely).si()) <= 2.0 * y.error.si() + 1e-12);
            CHECK(std::abs((x.high - y.high).si()) <= 2.0 * y.error.si() + 1e-12);
            return y;
        };
        const auto ready = agree(&plan::FoodResult::ready);
        const auto peak = agree(&plan::FoodResult::peak);
        agree(&plan::FoodResult::come_up);
        CHECK(peak.error.si() > 0.0);
        CHECK(peak.error < units::kelvins(0.2));  // well under what a card rounds to
        CHECK(ready.error < units::minutes(10));  // under a step of a quarter of an hour
    }
}

TEST_CASE("what never comes about comes after all that does") {
    const std::vector<std::optional<double>> values = {5, std::nullopt, 1, 4, std::nullopt, 2, 3};
    CHECK(plan::quantile_low(values, 0.0) == 1.0);
    CHECK(plan::quantile_high(values, 4.0 / 6.0) == 5.0);
    CHECK_FALSE(plan::quantile_high(values, 4.1 / 6.0).has_value());
    CHECK_FALSE(plan::quantile_high(values, 1.0).has_value());
}

TEST_CASE("quantiles take the next value outward, never one between") {
    const std::vector<double> values = {5, 1, 4, 2, 3};
    CHECK(plan::quantile_low(values, 0.3) == 2.0);
    CHECK(plan::quantile_high(values, 0.3) == 3.0);
    CHECK(plan::quantile_low(values, 0.0) == 1.0);
    CHECK(plan::quantile_high(values, 1.0) == 5.0);
}

TEST_CASE("the work of all processors is each index once, and a fault comes out") {
    std::vector<std::atomic<int>> seen(1003);
    plan::for_each_index(seen.size(), [&](std::size_t i) { ++seen[i]; });
    for (const auto& count : seen) {
        CHECK(count == 1);
    }
    plan::for_each_index(0, [](std::size_t) { FAIL("nothing to do"); });
    CHECK_THROWS_AS(plan::for_each_index(100,
                                         [](std::size_t i) {
                                             if (i == 77) {
                                                 throw std::runtime_error("one");
                                             }
                                         }),
                    std::runtime_error);
}

TEST_CASE("no spread has a width of zero: nothing is known exactly") {
    for (const facts::Spread& spread : facts::facts().spreads()) {
        CAPTURE(spread.key);
        CHECK(spread.high > spread.low);
    }
}
