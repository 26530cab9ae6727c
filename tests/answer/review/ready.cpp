// SPDX-License-Identifier: MIT
// A written log and a hold time mean the same by "ready": in 95 of 100 ways, all taken together.
#include "answer/hold/hold_time.hpp"
#include "answer/review/reading.hpp"
#include "answer/review/review_food.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace holdwater;
using namespace holdwater::support;
using answer::Verdict;

namespace {

/// Every reading is the same, with nothing poured between them that is not written.
std::string steady_log(double bath, double minutes) {
    const auto row = [&](double minute, const char* note) { return fmt::format("{:.3f},{},{}\n", minute, bath, note); };
    std::string text = "time_min,bath_c,note\n" + row(0.0, "food in");
    for (double minute = 15.0; minute < minutes - 1.0; minute += 15.0) {
        text += row(minute, "before") + row(minute, "after");
    }
    return text + row(minutes, "food out");
}

}  // namespace

TEST_CASE("held for the cautious time in a bath that read so much throughout, a log is ready") {
    const trip::Trip trip = log_trip("crew.toml");
    const trip::Food& food = trip.foods.front();
    problem::Problems remarks;
    const auto standard = answer::standard_for_review(trip, food, remarks);
    REQUIRE(standard.ok());
    const auto times =
        answer::HoldTimes::of(answer::piece_of(food), *standard, *trip.boxes.front().thermometer).value();
    for (const double bath : {61.0, 64.0}) {
        CAPTURE(bath);
        const answer::HoldTime hold = times.at(units::celsius(bath));
        REQUIRE(hold.cautious.has_value());
        const auto verdict_after = [&](units::Duration time) {
            return reviewed(trip, log_from(steady_log(bath, units::in_minutes(time)))).verdict;
        };
        CHECK(verdict_after(*hold.cautious) == Verdict::eat);
        // In half of the ways it is not safe by then.
        CHECK(verdict_after(*hold.likely) == Verdict::not_done);
    }
}

TEST_CASE("a cooler first reading never leaves the box with more water, and the path later on is nowhere higher") {
    const trip::Trip trip = log_trip("crew.toml");
    const auto path = [&](double first) {
        return reviewed(trip, log_from(fmt::format("time_min,bath_c,note\n0,{},food in\n240,60,\n240,66,topped up\n"
                                                   "900,58,food out\n",
                                                   first)))
            .bath_cautious;
    };
    const units::History hot = path(70.0);
    const units::History cool = path(66.0);
    for (double minute = 245.0; minute < 900.0; minute += 5.0) {
        CAPTURE(minute);
        CHECK(cool.at(units::minutes(minute)) <= hot.at(units::minutes(minute)) + units::kelvins(1e-6));
    }
}
