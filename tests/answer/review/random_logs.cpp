// SPDX-License-Identifier: MIT
// Random logs of histories whose truth is known: nothing unsafe is called better than it is, and little that is safe is
// thrown away. HOLDWATER_RANDOM_LOGS=N draws N histories instead of the few of every test run.
#include "answer/review/made_logs.hpp"
#include "answer/review/reading.hpp"
#include "answer/review/worst_history.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <iostream>

using namespace holdwater;
using namespace holdwater::support;
using answer::Verdict;

namespace {

std::size_t draws(std::size_t few) {
    const char* many = std::getenv("HOLDWATER_RANDOM_LOGS");
    return many != nullptr ? static_cast<std::size_t>(std::atoll(many)) : few;
}

Habit habit_of(std::size_t i) {
    return static_cast<Habit>(i % static_cast<std::size_t>(habits));
}

struct Count {
    int all = 0;
    int unsafe = 0;
    int called_eat = 0;
    int kinder = 0;
    int worse_told = 0;    // the same rows can tell of a worse history than the verdict
    int clearly_safe = 0;  // the bath never came near its floor
    int fire = 0;
    int away = 0;
    int away_if_unpoured = 0;
    int unproven = 0;  // clearly safe, but the same rows can tell of a history that is to be thrown away
    int away_proven = 0;
};

std::string in_words(const answer::Review& review) {
    const answer::FoodReview& food = review.foods[review.worst];
    return fmt::format("verdict {}, {} h below, growth {:.3f}, by {}, done {}, come-up {}, kill {:.2f}",
                       static_cast<int>(review.verdict), units::in_hours(review.below_floor), review.growth,
                       food.reason.figure, food.ready_late ? units::in_hours(*food.ready_late) : -1.0,
                       food.come_up ? units::in_hours(*food.come_up) : -1.0, food.kill);
}

std::string in_words(const std::optional<ToldHistory>& worst) {
    if (!worst) {
        return "no other history is known of these rows";
    }
    return fmt::format("at worst verdict {}, {:.2f} h below, growth {:.2f}, read {:+} K",
                       static_cast<int>(worst->truth.verdict), worst->truth.below_h, worst->truth.growth, worst->bias);
}

bool has_row_with(const trip::LogRow& row, const char* word) {
    return row.note.find(word) != std::string::npos;
}

}  // namespace

TEST_CASE("nothing unsafe is called better than it is, and what its log proves safe is not thrown away") {
    std::array<Count, habits> counts{};
    const std::size_t many = draws(90);
    for (std::size_t i = 0; i < many; ++i) {
        const MadeLog made = made_log(1000 + i, habit_of(i));
        CAPTURE(made.what);
        const trip::Trip trip = trip_from(made.trip_text);
        const trip::Log log = log_from(made.log_text);
        const answer::Review review = reviewed(trip, log);
        Count& count = counts[static_cast<std::size_t>(made.habit)];
        ++count.all;
        count.unsafe += made.truth > Verdict::not_done ? 1 : 0;
        CHECK(review.verdict >= made.truth);
        if (review.verdict < made.truth) {
            ++count.kinder;
            count.called_eat += review.verdict == Verdict::eat ? 1 : 0;
            CAPTURE(made.trip_text);
            CAPTURE(made.log_text);
            CHECK(review.verdict >= made.truth);
        }
        // What else the rows can tell of. Whether it was done is asked in 95 of 100 ways, not in the worst of all.
        const auto worst = worst_history(trip, review.foods.front().standard, log);
        if (worst) {
            CHECK(untold(*worst, log) < 0.02);
            // Within a tenth of a kelvin: an unstirred layer that a pour stirs away lets food take its heat a little
            // later than the review's three readings of it do.
            const bool kinder = worst->truth.verdict > Verdict::not_done && review.verdict < worst->truth.verdict &&
                                reviewed(trip, moved(log, -0.1)).verdict < worst->truth.verdict;
            count.worse_told += kinder ? 1 : 0;
            CHECK_FALSE(kinder);
        }
        // Clearly safe: a bath that never came within twice the error of its thermometer and 1 K of its floor.
        if (made.truth <= Verdict::not_done && made.spare > 2.0 * trip.boxes[0].thermometer->si() + 1.0) {
            const bool unproven = worst && worst->truth.verdict == Verdict::throw_away;
            ++count.clearly_safe;
            count.unproven += unproven ? 1 : 0;
            count.fire += review.verdict > Verdict::not_done && review.verdict < Verdict::throw_away ? 1 : 0;
            if (review.verdict == Verdict::throw_away) {
                ++count.away;
                count.away_proven += unproven ? 0 : 1;
                count.away_if_unpoured +=
                    !review.if_unpoured || review.if_unpoured->verdict == Verdict::throw_away ? 1 : 0;
                if (std::getenv("HOLDWATER_TELL") != nullptr) {
                    std::cout << made.what << "\n   " << in_words(review) << "\n   " << in_words(worst) << "\n";
                }
            }
        }
    }
    std::cout << "habit: logs, unsafe, of these called eat, called kinder, verdicts kinder than another history of the "
                 "same rows; clearly safe, of these sent to the fire, thrown away, thrown away even if nothing was "
                 "poured unwritten; safe for all that the log leaves open, of these thrown away\n";
    Count sum;
    for (int h = 0; h < habits; ++h) {
        const Count& c = counts[static_cast<std::size_t>(h)];
        const int proven = c.clearly_safe - c.unproven;
        std::cout << fmt::format("  {:16} {:5} {:5} {:3} {:3} {:3}; {:5} {:4} {:4} {:4}; {:5} {:4}\n",
                                 name_of(static_cast<Habit>(h)), c.all, c.unsafe, c.called_eat, c.kinder, c.worse_told,
                                 c.clearly_safe, c.fire, c.away, c.away_if_unpoured, proven, c.away_proven);
        sum.clearly_safe += c.clearly_safe;
        sum.unproven += c.unproven;
        sum.away_proven += c.away_proven;
    }
    std::cout << fmt::format(
        "  of {} clearly safe, {} are safe for all that their log leaves open, {} of these thrown "
        "away; {} could as well be histories to throw away\n",
        sum.clearly_safe, sum.clearly_safe - sum.unproven, sum.away_proven, sum.unproven);
    // Near none: one in thirty, and two more for the luck of a small draw.
    CHECK(30 * (sum.away_proven - 2) <= sum.clearly_safe - sum.unproven);
}

TEST_CASE("leaving out a row never makes a verdict kinder") {
    const std::size_t many = draws(72) / 4;
    for (std::size_t i = 0; i < many; ++i) {
        const MadeLog made = made_log(50000 + i, habit_of(i));
        CAPTURE(made.what);
        const trip::Trip trip = trip_from(made.trip_text);
        const trip::Log log = log_from(made.log_text);
        const Verdict before = reviewed(trip, log).verdict;
        for (std::size_t row = 0; row < log.rows.size(); ++row) {
            // The rows of food in and out say for how long it was in: without them another history is given.
            if (has_row_with(log.rows[row], "food")) {
                continue;
            }
            trip::Log less = log;
            less.rows.erase(less.rows.begin() + static_cast<std::ptrdiff_t>(row));
            CAPTURE(row);
            const answer::Review now = reviewed(trip, less);
            CHECK(now.verdict >= before);
            if (now.verdict < before) {
                CAPTURE(made.log_text);
                CHECK(now.verdict >= before);
            }
        }
    }
}

TEST_CASE("a lower reading, or a longer gap, never makes a verdict kinder") {
    const std::size_t many = draws(72) / 4;
    for (std::size_t i = 0; i < many; ++i) {
        const MadeLog made = made_log(90000 + i, habit_of(i));
        CAPTURE(made.what);
        const trip::Trip trip = trip_from(made.trip_text);
        const trip::Log log = log_from(made.log_text);
        const answer::Review before = reviewed(trip, log);
        const safety::Standard& standard = before.foods.front().standard;
        if (standard.hold_floor > standard.cook_floor) {
            continue;  // a floor that rises once the food is done, which a lower reading puts off: see laws.cpp
        }
        for (std::size_t row = 0; row < log.rows.size(); ++row) {
            CAPTURE(row);
            if (log.rows[row].bath) {
                for (const double down : {0.7, 3.0}) {
                    CAPTURE(down);
                    trip::Log lower = log;
                    lower.rows[row].bath = *lower.rows[row].bath - units::kelvins(down);
                    const answer::Review now = reviewed(trip, lower);
                    CHECK(now.verdict >= before.verdict);
                    if (now.verdict < before.verdict) {
                        CAPTURE(in_words(before));
                        CAPTURE(in_words(now));
                        CAPTURE(made.log_text);
                        CHECK(now.verdict >= before.verdict);
                    }
                }
            }
            // Time before it is done may make it done, and then a fall meets less raw food.
            const answer::FoodReview& food = before.foods.front();
            if (row > 0 && food.ready_late && food.in + *food.ready_late <= log.rows[row - 1].at) {
                trip::Log longer = log;
                for (std::size_t later = row; later < longer.rows.size(); ++later) {
                    longer.rows[later].at += units::hours(1.5);
                }
                const answer::Review now = reviewed(trip, longer);
                CAPTURE(in_words(before));
                CAPTURE(in_words(now));
                CAPTURE(made.log_text);
                CHECK(now.verdict >= before.verdict);
            }
        }
    }
}
