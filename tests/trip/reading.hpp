// SPDX-License-Identifier: MIT
// Shared by the tests of trip files: files, kinds of food, a small trip that can be changed line by line.
#pragma once

#include "support/files.hpp"
#include "trip/read_trip.hpp"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <string_view>

namespace holdwater::support {

inline std::string read_text(const std::filesystem::path& path) {
    REQUIRE_MESSAGE(std::filesystem::is_regular_file(path), path.string());
    return file_text(path.string());
}

inline std::filesystem::path trip_tests() {
    return std::filesystem::path(HOLDWATER_SOURCE_DIR) / "tests" / "trip";
}
inline std::filesystem::path trip_layouts() {
    return std::filesystem::path(HOLDWATER_SOURCE_DIR) / "layouts" / "trips";
}

inline trip::Known known() {
    return {{"beef-top-round", "pork-loin", "chicken-breast", "trout-farmed", "cod", "onion"}, {"en"}};
}

/// Reads files of one folder, as the command does for those that a trip file names.
inline trip::FileReader files_in(std::filesystem::path folder) {
    return [folder = std::move(folder)](const std::string& name) -> problem::Result<std::string> {
        if (!std::filesystem::is_regular_file(folder / name)) {
            return problem::error("file-unreadable", "no such file");
        }
        return read_text(folder / name);
    };
}

inline problem::Result<trip::Trip> read_trip_text(std::string_view text) {
    return trip::read_trip(text, "t.toml", files_in(trip_tests() / "logs"), known());
}

/// All problems as lines, each with a line feed.
inline std::string lines(const problem::Problems& problems) {
    std::string text;
    for (const problem::Problem& problem : problems) {
        text += problem::to_line(problem) + "\n";
    }
    return text;
}

inline const std::string small_trip = R"([trip]
name = "Alder Meadow"
people = 4
at_risk = false
altitude = "300 m"
from = 2027-05-08T10:00:00
serve = 2027-05-08T18:00:00
rules = "us"

[[food]]
name = "beef roast"
kind = "beef-top-round"
cut = "intact"
shape = "round"
thickness = "60 mm"
length = "200 mm"
mass = "0.6 kg"
start = "4 C"
target = "60 C"

[[box]]
inside = ["500 mm", "300 mm", "300 mm"]
water = "33 L"
thermometer = "1 K"
loss = "0.9 W/K"

[weather]
hours = [{ at = "12:00", air = "15 C" }]

[fire]
pots = 2
pot = "8 L"
boils_in = "25 min"
fuel = "wood"
cold_water = "10 C"
)";

/// The text with its one `from` replaced by `to`; a test with a `from` that is not there is itself wrong.
inline std::string changed(std::string text, std::string_view from, std::string_view to) {
    const auto at = text.find(from);
    REQUIRE_MESSAGE(at != std::string::npos, std::string(from));
    REQUIRE_MESSAGE(text.find(from, at + 1) == std::string::npos, std::string(from));
    return text.replace(at, from.size(), to);
}

/// A trip that must be readable, without a warning.
inline trip::Trip good_trip(std::string_view text) {
    auto result = read_trip_text(text);
    REQUIRE_MESSAGE(result.ok(), lines(result.problems()));
    CHECK(lines(result.problems()).empty());
    return std::move(result).value();
}

}  // namespace holdwater::support
