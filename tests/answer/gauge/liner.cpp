// SPDX-License-Identifier: MIT
// What the liner takes up, where the first fall shows it.
#include "answer/gauge/boxes.hpp"
#include "answer/gauge/gauge.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;
using units::hours;

TEST_CASE("a liner is found again within its stated error") {
    int tests = 0;
    int held = 0;
    std::uint64_t start = 1000;
    for (const double liner : {6000.0, 10000.0, 16000.0}) {
        for (const double litre : {15.0, 25.0, 36.0}) {
            for (const double loss : {0.5, 1.0, 1.8}) {
                for (const double error : {0.1, 0.3, 0.5}) {
                    const KnownBox box{loss, liner, litre, 66.0, error};
                    Noise noise(start++);
                    auto question = run_box(box, every(1.0, 6.0), steady(5), &noise);
                    question.liner.reset();
                    question.poured = celsius(66.0 + noise.next() * error / 1.96);
                    const auto made = answer::gauge(question);
                    REQUIRE(made.ok());
                    if (!made->liner) {
                        // Not shown: then the fall is within its error.
                        CHECK(made->first_fall <= made->first_fall_error);
                        continue;
                    }
                    ++tests;
                    held += made->liner->low.si() <= liner && liner <= made->liner->high.si() ? 1 : 0;
                    CHECK(made->liner_taken == made->liner->likely);
                }
            }
        }
    }
    CAPTURE(tests);
    CAPTURE(held);
    CHECK(tests >= 70);
    CHECK(held >= tests * 9 / 10);
}

TEST_CASE("without noise the liner and the loss come back whole, from --poured and from a log's own first reading") {
    const KnownBox box{0.9, 9000, 20, 66, 0.05};
    auto question = run_box(box, every(1.0, 6.0), steady(5));
    question.liner.reset();
    question.poured = celsius(66);
    const auto by_poured = answer::gauge(question);
    REQUIRE(by_poured.ok());
    REQUIRE(by_poured->liner.has_value());
    CHECK(by_poured->liner->likely.si() / 9000 < 1.02);
    CHECK(by_poured->liner->likely.si() / 9000 > 0.98);
    CHECK(by_poured->loss.likely.si() / 0.9 < 1.01);
    CHECK(by_poured->loss.likely.si() / 0.9 > 0.99);

    question.poured.reset();
    for (answer::GaugeReading& reading : question.readings) {
        reading.at += units::minutes(10);  // the settled bath is first read ten minutes after the pour
    }
    question.readings.insert(question.readings.begin(), {units::Duration{0}, celsius(66), "", std::nullopt});
    const auto by_log = answer::gauge(question);
    REQUIRE(by_log.ok());
    REQUIRE(by_log->liner.has_value());
    CHECK(by_log->liner->low.si() < 9000);
    CHECK(by_log->liner->high.si() > 8500);  // the ten minutes' loss is taken for none
    CHECK(by_log->first_used() > 0);         // the hot first reading is no part of the slow cooling
    CHECK_FALSE(support::has_code(by_log.problems(), "log-fall"));
}

TEST_CASE("no liner is read from noise, from a fall that no liner explains, or from nothing") {
    auto question = run_box({0.9, 0.0, 25, 64, 0.5}, every(1.0, 6.0), steady(8));
    question.liner.reset();
    const auto nothing = answer::gauge(question);
    REQUIRE(nothing.ok());
    CHECK_FALSE(nothing->liner.has_value());
    CHECK(nothing->liner_taken.si() > 0.0);  // a planning value stands in
    question.poured = celsius(64.3);
    const auto within = answer::gauge(question);
    REQUIRE(within.ok());
    CHECK_FALSE(within->liner.has_value());
    CHECK(within->first_fall_known);
    question.poured = celsius(95);
    const auto large = answer::gauge(question);
    REQUIRE(large.ok());
    CHECK_FALSE(large->liner.has_value());
    CHECK(support::has_code(large.problems(), "liner-large"));
    question.poured = celsius(60);
    const auto reversed = answer::gauge(question);
    CHECK_FALSE(reversed.ok());
    CHECK(support::has_code(reversed.problems(), "poured-below-bath"));
}
