// SPDX-License-Identifier: MIT
// Trips for tests: the demo files, and changes of them.
#pragma once

#include "facts/facts.hpp"
#include "support/files.hpp"
#include "trip/read_trip.hpp"

#include <filesystem>
#include <stdexcept>
#include <string>

namespace holdwater::support {

/// The text of a trip file, read: every kind of food is known, and both languages.
inline problem::Result<trip::Trip> read_trip_text(const std::string& text, const std::string& name) {
    trip::Known known;
    for (const facts::FoodKind& kind : facts::facts().foods()) {
        known.kinds.push_back(kind.key);
    }
    known.languages = {"en", "es", "fr"};
    return trip::read_trip(
        text, name,
        [](const std::string&) -> problem::Result<std::string> {
            return problem::error("file-unreadable", "no other file");
        },
        known);
}

/// A trip file by its path in the source tree.
inline trip::Trip trip_at(const std::string& where) {
    const std::string path = std::string(HOLDWATER_SOURCE_DIR) + "/" + where;
    auto trip = read_trip_text(file_text(path), path);
    if (!trip) {
        throw std::runtime_error(path + ": " + trip.problems().front().message);
    }
    return std::move(trip).value();
}

/// A demo by its name, or a trip of tests/plan/trips.
inline trip::Trip demo_trip(const std::string& name) {
    const std::string demo = "layouts/trips/" + name + ".toml";
    const bool shipped = std::filesystem::exists(std::string(HOLDWATER_SOURCE_DIR) + "/" + demo);
    return trip_at(shipped ? demo : "tests/plan/trips/" + name + ".toml");
}

}  // namespace holdwater::support
