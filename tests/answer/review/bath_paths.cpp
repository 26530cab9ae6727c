// SPDX-License-Identifier: MIT
// What the bath may have done between readings.
#include "answer/review/reading.hpp"
#include "answer/review/review_bath.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::support;
using units::celsius;
using units::Duration;
using units::History;
using units::hours;
using units::minutes;

namespace {

/// A box with round figures in still-standing air of 0 C: likely 0.02, fast 0.03, slow 0.01 per hour; no food.
answer::BoxCooling box() {
    answer::BoxCooling box;
    box.likely = 0.02 / 3600;
    box.slow = 0.01 / 3600;
    box.air_likely.add(Duration{0}, celsius(0));
    box.air_high = box.worst.air = box.air_likely;
    box.worst.heat.liner = units::HeatCapacity{1.0e5};  // and no water: the capacity does not depend on the reading
    box.worst.heat.loss = units::HeatLoss{1.0e5 * 0.03 / 3600};
    return box;
}

answer::BathPaths paths_of(const std::string& rows, double error = 1.0,
                           answer::Unpoured unpoured = answer::Unpoured::as_written) {
    const trip::Log log = log_from("time_min,bath_c,note\n" + rows);
    return answer::paths_of(log, box(), {}, units::kelvins(error), celsius(54.4), log.rows.front().at,
                            log.rows.back().at, units::System::metric, unpoured);
}

/// The lowest bath so many hours after a reading: the whole error off, cooling as the box at its worst.
double lowest_after(double reading, double hours, double error = 1.0) {
    return (reading - error) * std::exp(-0.03 * hours);
}

}  // namespace

TEST_CASE("a plausible fall is a straight line in the likely path, and the box at its worst in the cautious one") {
    const auto paths = paths_of("0,60,\n60,59,\n120,57.8,\n");
    CHECK(paths.remarks.empty());
    for (const double m : {0.0, 30.0, 60.0, 90.0, 120.0}) {
        const double line = m <= 60 ? 60 - m / 60 : 59 - 1.2 * (m - 60) / 60;
        CHECK(near_abs(paths.likely.at(minutes(m)).celsius(), line, 1e-9));
    }
    CHECK(near_abs(paths.cautious.at(minutes(30)).celsius(), lowest_after(60, 0.5), 0.01));
    CHECK(near_abs(paths.cautious.at(minutes(90)).celsius(), lowest_after(59, 0.5), 0.01));
    // At a reading it is the reading, less the error.
    CHECK(near_abs(paths.cautious.at(minutes(60)).celsius(), 58, 1e-9));
    CHECK(near_abs(paths.cautious.at(minutes(120)).celsius(), 56.8, 1e-9));
}

TEST_CASE("where the log says that nothing was poured, the bath was never colder than the later reading") {
    for (const char* words : {"before", "before top-up", "nothing poured", "no top-up"}) {
        CAPTURE(words);
        const auto closed = paths_of(std::string("0,60,topped up\n240,56.4,") + words + "\n");
        CHECK(closed.open.empty());
        CHECK(near_abs(closed.cautious.at(minutes(1)).celsius(), lowest_after(60, 1.0 / 60), 0.01));
        CHECK(near_abs(closed.cautious.at(minutes(239)).celsius(), 55.4, 1e-9));
    }
    // The words reach back over readings to the last pour that is written, and no further.
    const auto chain = paths_of("0,60,\n120,58,topped up\n240,56.5,\n360,55,before top-up\n");
    CHECK(near_abs(chain.cautious.at(minutes(119)).celsius(), lowest_after(60, 119.0 / 60), 0.01));
    CHECK(near_abs(chain.cautious.at(minutes(239)).celsius(), 55.5, 1e-9));
    CHECK(near_abs(chain.cautious.at(minutes(359)).celsius(), 54, 1e-9));
    // A pour in a row without a reading: what came before it is as low as it can be.
    const auto row = paths_of("0,60,\n120,,topped up\n240,59,before top-up\n");
    CHECK(near_abs(row.cautious.at(minutes(119)).celsius(), lowest_after(60, 119.0 / 60), 0.02));
    CHECK(near_abs(row.cautious.at(minutes(121)).celsius(), 58, 1e-9));
    // After a row that was read before a pour there was one.
    const auto gone = paths_of("0,60,before\n240,56.4,before\n");
    CHECK(near_abs(gone.cautious.at(minutes(239)).celsius(), lowest_after(60, 239.0 / 60), 0.01));
    // Nor are they believed of a bath that is warmer than its box.
    const auto warm = paths_of("0,60,topped up\n480,59.5,before top-up\n");
    CHECK(near_abs(warm.cautious.at(minutes(479)).celsius(), lowest_after(60, 479.0 / 60), 0.01));
    // Without the words the same readings are an open question.
    const auto open = paths_of("0,60,topped up\n240,56.4,\n");
    REQUIRE(open.open.size() == 1);
    CHECK(open.open.front().row == 1);
    CHECK(near_abs(open.cautious.at(minutes(239)).celsius(), lowest_after(60, 239.0 / 60), 0.01));
    const auto asked = paths_of("0,60,topped up\n240,56.4,\n", 1.0, answer::Unpoured::wherever_possible);
    CHECK(near_abs(asked.cautious.at(minutes(239)).celsius(), 55.4, 1e-9));
}

TEST_CASE("a reading that the thermometer's error explains does not pull the bath under what the box allows") {
    // Off by 2 K. Read too warm, 58 C comes to 51.44 in 4 h; read too cold, 62 C comes to 54.99, and shows 52.99.
    const double alone = lowest_after(60, 4, 2.0);
    const auto explained = paths_of("0,60,\n240,53.2,\n300,53,\n", 2.0);
    CHECK(near_abs(explained.cautious.at(minutes(240)).celsius(), alone, 0.01));
    CHECK(near_abs(explained.cautious.at(minutes(270)).celsius(), lowest_after(60, 4.5, 2.0), 0.01));
    // One that no error explains is taken as read, all of the error off.
    const auto colder = paths_of("0,60,\n240,52.9,\n300,52.5,\n", 2.0);
    CHECK(near_abs(colder.cautious.at(minutes(240)).celsius(), 50.9, 1e-9));
    CHECK(near_abs(colder.cautious.at(minutes(270)).celsius(), lowest_after(52.9, 0.5, 2.0), 0.01));
    // Never kinder without the row.
    for (const char* row : {"240,53.2,\n", "240,55,\n", "240,58,\n"}) {
        const auto with = paths_of(std::string("0,60,\n") + row + "300,60,\n", 2.0);
        const auto without = paths_of("0,60,\n300,60,\n", 2.0);
        for (double m = 0.0; m <= 300.0; m += 7.0) {
            CHECK(without.cautious.at(minutes(m)) <=
                  with.cautious.at(minutes(m)) + units::kelvins(1e-3));  // drawn by straight lines
        }
    }
}

TEST_CASE("before a rise the bath falls on until just before the second reading") {
    const auto paths = paths_of("0,58,\n240,62,\n");
    CHECK(support::has_code(paths.remarks, "rise-without-top-up"));
    CHECK(paths.remarks.front().place->line == 3);
    const Duration before = minutes(240) - units::seconds(1);
    CHECK(near_abs(paths.likely.at(before).celsius(), 58 * std::exp(-0.08), 0.05));
    CHECK(near_abs(paths.cautious.at(before).celsius(), lowest_after(58, 4), 0.05));
    CHECK(near_abs(paths.likely.at(minutes(240)).celsius(), 62, 1e-9));
    CHECK(near_abs(paths.cautious.at(minutes(240)).celsius(), 61, 1e-9));
}

TEST_CASE("a written top-up ends the likely fall at its row, and the cautious one not at all") {
    const auto with_row = paths_of("0,58,\n60,,top-up\n240,62,\n");
    CHECK(with_row.remarks.empty());
    CHECK(near_abs(with_row.likely.at(minutes(90)).celsius(), 62, 1e-9));
    CHECK(near_abs(with_row.likely.at(minutes(59)).celsius(), 58 * std::exp(-0.02 * 59 / 60), 0.05));
    const auto without = paths_of("0,58,\n240,62,\n");
    for (double m = 0; m <= 240; m += 7) {
        CHECK(near_abs(with_row.cautious.at(minutes(m)).celsius(), without.cautious.at(minutes(m)).celsius(), 1e-9));
    }
    // Read before pouring: the jump comes right after the row that says so.
    const auto read_first = paths_of("0,58,top-up\n60,62,\n");
    CHECK(near_abs(read_first.likely.at(minutes(1)).celsius(), 62, 1e-9));
}

TEST_CASE("two readings at one moment are before and after a top-up") {
    const auto paths = paths_of("0,60,\n60,58.5,\n60,64,\n120,62.5,\n");
    CHECK(paths.remarks.empty());
    CHECK(near_abs(paths.cautious.at(minutes(60) - units::seconds(1)).celsius(), lowest_after(60, 1), 0.01));
    CHECK(near_abs(paths.cautious.at(minutes(60)).celsius(), 63, 1e-9));
}

TEST_CASE("a bath that stays too warm for its box was topped up unseen") {
    const auto paths = paths_of("0,60,\n480,59.5,\n");
    CHECK(support::has_code(paths.remarks, "warmer-than-box"));
    CHECK(near_abs(paths.cautious.at(minutes(479.9)).celsius(), lowest_after(60, 8), 0.05));
    CHECK(near_abs(paths.cautious.at(minutes(480)).celsius(), 58.5, 1e-9));
}

TEST_CASE("a fall that no closed box can show may have come at once") {
    const auto paths = paths_of("0,60,\n60,50,\n");
    CHECK(support::has_code(paths.remarks, "fell-fast"));
    CHECK(near_abs(paths.cautious.at(units::seconds(1)).celsius(), 49, 1e-9));
    CHECK(near_abs(paths.likely.at(minutes(30)).celsius(), 55, 1e-9));
}

TEST_CASE("through a gap the lowest path that the box allows") {
    const std::string head = "0,64,\n30,63.5,\n60,63,\n";
    const auto paths = paths_of(head + "540,56,\n570,55.6,\n");
    CHECK(near_abs(paths.cautious.at(minutes(539.9)).celsius(), lowest_after(63, 8), 0.1));
    CHECK(paths.cautious.at(minutes(300)) < paths.likely.at(minutes(300)) - units::kelvins(1));
}

TEST_CASE("a reading that no box could show is doubtful, up or down, and used as read") {
    for (const double odd : {44.0, 75.0}) {
        CAPTURE(odd);
        const auto paths = paths_of("0,62,\n60,60.5,\n65," + std::to_string(odd) + ",\n70,60.4,\n120,59.4,\n");
        CHECK(paths.doubtful == std::vector<std::size_t>{2});
        CHECK(support::has_code(paths.remarks, "doubtful-reading"));
        CHECK(paths.remarks.front().place->line == 4);
        CHECK(paths.remarks.front().place->column == 1);
        CHECK(near_abs(paths.cautious.at(minutes(65)).celsius(), odd < 60 ? odd - 1 : 59.4, 1e-6));
        CHECK(near_abs(paths.likely.at(minutes(65)).celsius(), odd, 1e-9));
    }
    // Poured in between, or slowly: a real thing.
    CHECK(paths_of("0,62,\n60,60.5,\n65,52,\n70,60.4,topped up\n120,59.4,\n").doubtful.empty());
    CHECK(paths_of("0,62,\n60,60.5,\n120,52,\n180,60.4,\n").doubtful.empty());
}

TEST_CASE("before the first reading as the first, after the last one it falls") {
    const trip::Log log = log_from("time_min,bath_c,note\n0,,food in\n30,62,\n60,61.4,\n180,,served\n");
    const auto paths = answer::paths_of(log, box(), {}, units::kelvins(1), celsius(54.4), Duration{0}, hours(3));
    CHECK(near_abs(paths.cautious.at(Duration{0}).celsius(), 61, 1e-9));
    CHECK(support::has_code(paths.remarks, "unread-end"));
    CHECK_FALSE(support::has_code(paths.remarks, "unread-start"));
    CHECK(near_abs(paths.cautious.at(hours(3)).celsius(), lowest_after(61.4, 2), 0.01));
    CHECK(near_abs(paths.likely.at(hours(3)).celsius(), 61.4 * std::exp(-0.04), 0.01));
}

TEST_CASE("a bath that nobody read for long after the food went in counts as just below the floor") {
    const trip::Log log = log_from("time_min,bath_c,note\n0,,food in\n90,62,\n120,61.4,\n");
    const auto paths = answer::paths_of(log, box(), {}, units::kelvins(1), celsius(54.4), Duration{0}, hours(2));
    CHECK(support::has_code(paths.remarks, "unread-start"));
    CHECK(paths.cautious.at(minutes(89)) < celsius(54.4));
    CHECK(near_abs(paths.cautious.at(minutes(90)).celsius(), 61, 1e-9));
    CHECK(near_abs(paths.likely.at(minutes(45)).celsius(), 62, 1e-9));
    const answer::Review review = reviewed(log_trip("crew.toml"), log);
    // Strict: the clock that began there runs until the raw core is at the floor for the first time, or to the end.
    CHECK(near_abs(units::in_hours(review.below_floor), 2.0, 0.01));
}

TEST_CASE("the cautious path is nowhere above the likely one") {
    for (const char* name : {"fair-night", "drop-to-51", "down-to-48", "forgotten-lid", "fast-leak", "late-top-up",
                             "thermometer-jump", "gap-at-night", "fahrenheit-midnight", "day-long-dip"}) {
        CAPTURE(name);
        const answer::Review review = reviewed(log_trip("crew.toml"), named_log(name));
        const Duration end = review.bath_likely.points.back().at;
        for (Duration t{0}; t <= end; t += minutes(1)) {
            CHECK(review.bath_cautious.at(t) <= review.bath_likely.at(t));
        }
    }
}
