// SPDX-License-Identifier: MIT
// What must hold for every box: over grids.
#include "answer/gauge/box_loss.hpp"
#include "answer/gauge/boxes.hpp"
#include "answer/gauge/gauge.hpp"
#include "facts/facts.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;
using units::hours;

TEST_CASE("a better box holds longer, colder air and wind less long, and the safe figure is under the likely one") {
    for (const double air : {-12.0, 3.0, 8.0, 22.0}) {
        double last_likely = 1e9;
        double last_low = 1e9;
        for (const double loss : {0.3, 0.5, 0.8, 1.2, 2.0}) {
            const auto made = answer::gauge(run_box({loss, 4000, 25, 66, 0.5}, {0, 2, 5}, steady(air)));
            REQUIRE(made.ok());
            const auto& mid = made->hours[1];
            REQUIRE(mid.likely.has_value());
            CHECK(units::in_hours(*mid.likely) < last_likely);
            CHECK(units::in_hours(*mid.low) < last_low);
            last_likely = units::in_hours(*mid.likely);
            last_low = units::in_hours(*mid.low);
            for (std::size_t i = 0; i < made->hours.size(); ++i) {
                const auto& row = made->hours[i];
                CHECK(*row.low < *row.likely);
                CHECK(*row.low_breezy < *row.low);
                CHECK(*row.low_windy < *row.low_breezy);
                if (i > 0) {
                    CHECK(row.outside < made->hours[i - 1].outside);
                    CHECK(*row.likely < *made->hours[i - 1].likely);
                    CHECK(*row.low < *made->hours[i - 1].low);
                }
            }
        }
    }
}

TEST_CASE("the hours are those after which the bath engine stands at the floor") {
    for (const double loss : {0.5, 1.3}) {
        const auto made = answer::gauge(run_box({loss, 4000, 25, 66, 0.5}, {0, 2, 5}, steady(8)));
        REQUIRE(made.ok());
        for (const auto& row : made->hours) {
            heat::Bath bath({units::HeatLoss{loss}, units::HeatCapacity{4000}, units::Area{0.15}}, units::litres(25),
                            made->start, steady(row.outside.celsius()));
            bath.advance_to(*row.likely);
            // The engine's mass of 25 L differs by the density at its start (2e-3 of the fall).
            CHECK(near_abs(bath.temperature().celsius(), 54.4, 0.03));
        }
    }
}

TEST_CASE("a larger reading error never narrows the band, and the band is never under the spread of boxes") {
    const facts::Spread& least = facts::facts().spread("box-loss");
    for (const auto& when : {std::vector<double>{0, 1}, {0, 4}, {0, 1, 2, 3, 4, 5, 6}}) {
        double low = 1e9;
        double high = 0.0;
        for (const double error : {0.1, 0.2, 0.4, 0.8, 1.6, 3.2}) {
            auto question = run_box({0.9, 4000, 25, 64, 0.5}, when, steady(8));
            question.reading_error = units::kelvins(error);
            const auto made = answer::gauge(question);
            REQUIRE(made.ok());
            CHECK(made->loss.low.si() <= low);
            CHECK(made->loss.high.si() >= high);
            CHECK(made->loss.low.si() > 0.0);
            CHECK(made->loss.low / made->loss.likely <= least.low + 1e-12);
            CHECK(made->loss.high / made->loss.likely >= least.high - 1e-12);
            low = made->loss.low.si();
            high = made->loss.high.si();
        }
    }
}

TEST_CASE("a weak test says so, and how long a good one takes; that one is not weak") {
    const KnownBox box{0.6, 4000, 25, 64, 0.2};
    const auto weak = answer::gauge(run_box(box, {0, 1}, steady(8)));
    REQUIRE(weak.ok());
    CHECK(weak->loss.weak);
    CHECK(support::has_code(weak.problems(), "weak-test"));
    REQUIRE(weak->good_test.has_value());
    const auto good = answer::gauge(run_box(box, {0, units::in_hours(*weak->good_test)}, steady(8)));
    REQUIRE(good.ok());
    CHECK_FALSE(good->loss.weak);
    CHECK_FALSE(support::has_code(good.problems(), "weak-test"));
}

TEST_CASE("two rows for a trip file carry the same loss and at least the same band as all readings") {
    Noise noise(77);
    for (const double error : {0.3, 1.0, 2.0}) {
        const KnownBox box{1.0, 4000, 25, 64, error};
        const auto made = answer::gauge(run_box(box, every(0.5, 6.0), steady(8), &noise));
        REQUIRE(made.ok());
        heat::BoxTest test;
        const auto& first = made->readings[made->first_used()];
        const auto& last = made->readings[made->last_used()];
        test.readings = {{units::Duration{0}, made->in_mean_air(first.at)},
                         {last.at - first.at, made->in_mean_air(last.at)}};
        test.water = units::litres(25);
        test.outside = made->outside;
        test.liner = made->liner_taken;
        test.reading_error = made->pair_error;
        const auto again = heat::loss_from(test);
        REQUIRE(again.ok());
        CHECK(near_rel(again->likely.si(), made->loss.likely.si(), 1e-3));
        CHECK(near_rel(again->high.si(), made->loss.high.si(), 1e-3));
    }
}

TEST_CASE("floor and fill: none of the time, or for ever") {
    auto question = run_box({0.9, 4000, 25, 64, 0.5}, {0, 5}, steady(8));
    question.floor = celsius(80);
    const auto never = answer::gauge(question);
    REQUIRE(never.ok());
    CHECK(never->hours[0].likely->si() == 0.0);
    CHECK(never->hours[0].low->si() == 0.0);
    CHECK_FALSE(answer::time_above(celsius(60), celsius(20), celsius(25), hours(20)).has_value());
    question.floor = celsius(54.4);
    question.fill = celsius(75);
    const auto hot = answer::gauge(question);
    question.fill = celsius(60);
    const auto cool = answer::gauge(question);
    REQUIRE(hot.ok());
    REQUIRE(cool.ok());
    CHECK(*hot->hours[0].low > *cool->hours[0].low);
    CHECK(hot->loss.likely == cool->loss.likely);
}

TEST_CASE(
    "law: two readings give a loss that a trip file may name, or are refused; a test under an hour is called short") {
    int answered = 0;
    for (const double minutes : {0.5, 5.0, 30.0, 59.0, 60.0, 240.0, 4000.0}) {
        for (const double fall : {-1.0, 0.0, 1e-13, 1e-6, 0.01, 0.5, 2.0, 10.0, 40.0}) {
            CAPTURE(minutes);
            CAPTURE(fall);
            answer::GaugeQuestion question;
            question.readings = {{units::Duration{0}, celsius(62), "", std::nullopt},
                                 {units::minutes(minutes), celsius(62 - fall), "", std::nullopt}};
            question.outside = steady(8);
            question.water = units::litres(20);
            question.reading_error = units::kelvins(0.5);
            question.floor = celsius(54.4);
            question.liner = units::HeatCapacity{4000};
            trip::Box box;
            box.test = std::vector<trip::BoxReading>{{units::Duration{0}, celsius(62)},
                                                     {units::minutes(minutes), celsius(62 - fall)}};
            box.test_water = question.water;
            box.test_outside = celsius(8);
            box.reading_error = question.reading_error;
            const auto of_trip = answer::loss_of(box, *question.liner);
            const auto made = answer::gauge(question);
            if (of_trip.ok()) {
                CHECK(of_trip->likely >= units::HeatLoss{0.05});
                CHECK(of_trip->likely <= units::HeatLoss{20});
            } else {
                REQUIRE(of_trip.problems().front().place.has_value());
            }
            if (!made.ok()) {
                continue;
            }
            CHECK(of_trip.ok());
            ++answered;
            CHECK(near_rel(made->loss.likely.si(), of_trip->likely.si(), 1e-9));
            CHECK(support::has_code(made.problems(), "test-short") == (minutes < 60.0));
            CHECK(support::has_code(made.problems(), "weak-test") == (fall < 5.0));
            if (made->good_test) {
                CHECK(*made->good_test >= hours(1));
                CHECK(*made->good_test <= hours(72));
            }
        }
    }
    CHECK(answered > 10);
    CHECK(answered < 50);
}
