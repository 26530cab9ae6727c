// SPDX-License-Identifier: MIT
// What must hold for every log: nothing that is worse for the food makes its verdict milder.
#include "answer/review/reading.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <utility>

using namespace holdwater;
using namespace holdwater::support;
using answer::Review;
using answer::Verdict;
using units::in_hours;

namespace {

// A floor that rises once the food is done (uk: 60 to 63 C) is left out here: a cooler bath is done later, so the
// higher floor counts later. Its own law stands below.
const std::array<std::pair<const char*, const char*>, 20> logs{{{"crew.toml", "fair-night"},
                                                                {"crew.toml", "drop-to-51"},
                                                                {"crew.toml", "down-to-48"},
                                                                {"crew.toml", "forgotten-lid"},
                                                                {"crew.toml", "fast-leak"},
                                                                {"crew.toml", "late-top-up"},
                                                                {"crew.toml", "thermometer-jump"},
                                                                {"crew.toml", "gap-at-night"},
                                                                {"crew.toml", "fahrenheit-midnight"},
                                                                {"crew.toml", "day-long"},
                                                                {"crew.toml", "day-long-dip"},
                                                                {"crew.toml", "too-early"},
                                                                {"minced.toml", "minced"},
                                                                {"chicken.toml", "poultry-under-60"},
                                                                {"chicken.toml", "too-early"},
                                                                {"crew.toml", "core-fell"},
                                                                {"crew.toml", "took-out-early"},
                                                                {"crew.toml", "in-late"},
                                                                {"fine-thermometer.toml", "just-above"},
                                                                {"chicken.toml", "raw-clock"}}};

}  // namespace

TEST_CASE("lower readings never make a verdict milder, nor the time below shorter, nor growth less") {
    for (const auto& [trip_name, log_name] : logs) {
        const trip::Trip trip = log_trip(trip_name);
        const trip::Log log = named_log(log_name);
        CAPTURE(trip_name);
        CAPTURE(log_name);
        Review before = reviewed(trip, moved(log, 3));
        for (const double down :
             {-2.5, -2.0, -1.5, -1.0, -0.5, 0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 9.0, 14.0, 20.0}) {
            CAPTURE(down);
            const Review now = reviewed(trip, moved(log, -down));
            CHECK(now.verdict >= before.verdict);
            CHECK(now.below_floor >= before.below_floor - units::seconds(1e-6));
            CHECK(now.growth >= before.growth - 1e-9);
            CHECK(now.foods[0].kill <= before.foods[0].kill + 1e-9);
            before = now;
        }
    }
}

TEST_CASE("one single lower reading never makes a verdict milder") {
    for (const auto& [trip_name, log_name] : logs) {
        const trip::Trip trip = log_trip(trip_name);
        const trip::Log log = named_log(log_name);
        const Review before = reviewed(trip, log);
        CAPTURE(log_name);
        for (std::size_t i = 0; i < log.rows.size(); ++i) {
            CAPTURE(i);
            for (const double down : {1.0, 5.0}) {
                trip::Log lower = log;
                if (!lower.rows[i].bath) {
                    continue;
                }
                lower.rows[i].bath = *lower.rows[i].bath - units::kelvins(down);
                const Review now = reviewed(trip, lower);
                CHECK(now.verdict >= before.verdict);
            }
        }
    }
}

TEST_CASE("under the uk rules lower readings never shorten the time below for food that is done") {
    const trip::Trip trip = log_trip("uk.toml");
    for (const char* name : {"uk-one-fall", "uk-second-fall"}) {
        trip::Log log = named_log(name);
        units::Duration below{-1};
        for (double down = 0.0; down <= 4.0; down += 0.5) {
            // Only once it is done, at 11:30 at the latest.
            trip::Log lower = log;
            for (trip::LogRow& row : lower.rows) {
                if (row.at >= units::hours(3)) {
                    row.bath = *row.bath - units::kelvins(down);
                }
            }
            const Review now = reviewed(trip, lower);
            CAPTURE(down);
            CHECK(now.below_floor >= below);
            below = now.below_floor;
        }
    }
}

TEST_CASE("a top-up row more, or written top-ups, never shorten the time below") {
    for (const auto& [trip_name, log_name] : logs) {
        const trip::Trip trip = log_trip(trip_name);
        const trip::Log log = named_log(log_name);
        const Review before = reviewed(trip, log);
        CAPTURE(log_name);
        for (std::size_t i = 0; i + 1 < log.rows.size(); ++i) {
            if (!(log.rows[i + 1].at > log.rows[i].at)) {
                continue;
            }
            trip::Log more = log;
            trip::LogRow row;
            row.at = log.rows[i].at + (log.rows[i + 1].at - log.rows[i].at) / 2.0;
            row.note = "topped up";
            row.place = log.rows[i + 1].place;
            more.rows.insert(more.rows.begin() + static_cast<std::ptrdiff_t>(i) + 1, row);
            const Review now = reviewed(trip, more);
            CHECK(now.below_floor >= before.below_floor);
            CHECK(now.verdict >= before.verdict);
            trip::Log noted = log;
            noted.rows[i].note += "; topped up";
            CHECK(reviewed(trip, noted).below_floor >= before.below_floor);
        }
    }
}

TEST_CASE("the cautious clock never runs for less long than the likely one") {
    for (const auto& [trip_name, log_name] : logs) {
        CAPTURE(log_name);
        const Review review = reviewed(log_trip(trip_name), named_log(log_name));
        for (const answer::FoodReview& food : review.foods) {
            CHECK(food.fall.below_floor >= food.below_likely);
            CHECK(food.growth.bound >= food.growth.likely);
            CHECK(food.kill <= food.kill_likely);
            if (food.ready_late) {
                REQUIRE(food.ready_likely.has_value());
                CHECK(*food.ready_late >= *food.ready_likely);
            }
        }
    }
}

TEST_CASE("staying on at a fine temperature makes no verdict worse") {
    const trip::Trip trip = log_trip("crew.toml");
    const std::string head = "time_min,bath_c,note\n0,70,food in\n60,67.4,\n120,66.2,\n";
    std::string rows = head;
    Verdict before = Verdict::throw_away;
    for (int h = 3; h <= 20; ++h) {
        rows += fmt::format("{},{},\n{},65.0,topped up\n", h * 60, 63.8, h * 60);
        const Review now = reviewed(trip, log_from(rows));
        CAPTURE(h);
        CHECK(now.verdict <= before);
        CHECK(now.below_floor.si() == 0.0);
        before = now.verdict;
    }
    CHECK(before == Verdict::eat);
}

TEST_CASE("a food with a wider error of its thermometer is never judged milder") {
    for (const auto& [trip_name, log_name] : logs) {
        trip::Trip trip = log_trip(trip_name);
        const trip::Log log = named_log(log_name);
        CAPTURE(log_name);
        Verdict before = Verdict::eat;
        units::Duration below{0};
        for (const double error : {0.2, 0.5, 1.0, 2.0, 3.0, 5.0}) {
            trip.boxes[0].thermometer = units::kelvins(error);
            const Review now = reviewed(trip, log);
            CAPTURE(error);
            CHECK(now.verdict >= before);
            CHECK(now.below_floor >= below);
            before = now.verdict;
            below = now.below_floor;
        }
    }
}

TEST_CASE("the same log gives the same review") {
    const trip::Trip trip = log_trip("crew.toml");
    const Review a = reviewed(trip, named_log("late-top-up"));
    const Review b = reviewed(trip, named_log("late-top-up"));
    CHECK(a.below_floor == b.below_floor);
    CHECK(a.growth == b.growth);
    CHECK(a.foods[0].kill == b.foods[0].kill);
}
