// SPDX-License-Identifier: MIT
// Trips and logs of tests/logs, and logs written in a test.
#pragma once

#include "answer/review/review.hpp"
#include "facts/facts.hpp"
#include "support/problems.hpp"
#include "support/trips.hpp"
#include "trip/read_log.hpp"
#include "trip/read_trip.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

namespace holdwater::support {

inline std::string logs_folder() {
    return std::string(HOLDWATER_SOURCE_DIR) + "/tests/logs/";
}

inline trip::Trip trip_from(const std::string& text) {
    trip::Known known;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        known.kinds.push_back(kind.key);
    }
    auto trip = trip::read_trip(
        text, "trip.toml",
        [](const std::string&) -> problem::Result<std::string> {
            return problem::error("file-unreadable", "no other file");
        },
        known);
    for (const problem::Problem& p : trip.problems()) {
        CAPTURE(problem::to_line(p));
        CHECK(p.severity != problem::Severity::error);
    }
    REQUIRE(trip.ok());
    return std::move(trip).value();
}

inline trip::Trip log_trip(const std::string& name) {
    return trip_from(file_text(logs_folder() + name));
}

inline trip::Log log_from(const std::string& text) {
    auto log = trip::read_log(text, "log.csv");
    for (const problem::Problem& p : log.problems()) {
        CAPTURE(problem::to_line(p));
        CHECK(p.severity != problem::Severity::error);
    }
    REQUIRE(log.ok());
    return std::move(log).value();
}

inline trip::Log named_log(const std::string& name) {
    return log_from(file_text(logs_folder() + name + ".csv"));
}

inline answer::Review reviewed(const trip::Trip& trip, const trip::Log& log) {
    auto review = answer::review(trip, log);
    for (const problem::Problem& p : review.problems()) {
        CAPTURE(problem::to_line(p));
        CHECK(p.severity != problem::Severity::error);
    }
    REQUIRE(review.ok());
    return std::move(review).value();
}

/// The same log, every bath reading moved by so many K.
inline trip::Log moved(trip::Log log, double kelvins) {
    for (trip::LogRow& row : log.rows) {
        if (row.bath) {
            row.bath = *row.bath + units::kelvins(kelvins);
        }
    }
    return log;
}

}  // namespace holdwater::support
