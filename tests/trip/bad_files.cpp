// SPDX-License-Identifier: MIT
// Files that must be refused (bad/) and files that are odd but possible (odd/), each with the messages that it must
// give, to the byte: NAME.toml or NAME.csv beside NAME.expected (after the line with the licence).
#include "facts/facts.hpp"
#include "support/problems.hpp"
#include "trip/read_log.hpp"
#include "trip/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::vector<std::filesystem::path> files_of(const std::filesystem::path& folder, const std::string& extension) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() == extension) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

struct Outcome {
    bool value = false;
    problem::Problems problems;
};

Outcome read_any(const std::filesystem::path& file) {
    const std::string name = file.filename().string();
    const std::string text = read_text(file);
    if (file.extension() == ".csv") {
        const auto log = trip::read_log(text, name);
        return {log.ok(), log.problems()};
    }
    const auto trip = trip::read_trip(text, name, files_in(file.parent_path()), known());
    return {trip.ok(), trip.problems()};
}

/// The sets of rules that there are in place of {rulesets}, so that a new one changes no expectation.
std::string with_rulesets(std::string text) {
    const std::string place = "{rulesets}";
    std::string all;
    for (const facts::GeneralRules& rules : facts::facts().rulesets()) {
        all += (all.empty() ? "" : ", ") + rules.key;
    }
    for (auto at = text.find(place); at != std::string::npos; at = text.find(place, at + all.size())) {
        text.replace(at, place.size(), all);
    }
    return text;
}

void check_expected(const std::filesystem::path& file, bool must_be_read) {
    CAPTURE(file.filename().string());
    std::filesystem::path expected = file;
    expected.replace_extension(".expected");
    const Outcome outcome = read_any(file);
    CHECK(outcome.value == must_be_read);
    CHECK(problem::has_error(outcome.problems) == !must_be_read);
    CHECK("# SPDX-License-Identifier: MIT\n" + lines(outcome.problems) == with_rulesets(read_text(expected)));
    for (const problem::Problem& problem : outcome.problems) {
        CHECK(problem.place.has_value());
        CHECK(!problem.hint.empty());
    }
}

void check_folder(const std::string& folder, std::size_t at_least, bool must_be_read) {
    const auto trips = files_of(trip_tests() / folder, ".toml");
    CHECK(trips.size() >= at_least);
    auto files = files_of(trip_tests() / folder, ".csv");
    files.insert(files.end(), trips.begin(), trips.end());
    for (const auto& file : files) {
        check_expected(file, must_be_read);
    }
    // No expectation without its file.
    CHECK(files_of(trip_tests() / folder, ".expected").size() == files.size());
}

}  // namespace

TEST_CASE("every bad file is refused with exactly its messages") {
    check_folder("bad", 100, false);
}

TEST_CASE("every odd file is read with exactly its warnings") {
    check_folder("odd", 10, true);
}

TEST_CASE("text that is not UTF-8, and a file of other nature, are refused") {
    const auto binary = read_trip_text(changed(small_trip, "Alder", "\xE4lder"));
    CHECK(lines(binary.problems()) ==
          "t.toml:2:8: error: this cannot be read: Encountered invalid utf-8 sequence (save the file as UTF-8 text)\n");
    // The bad byte begins a line: the reader's place is the end of the one before.
    const auto next_line = read_trip_text(changed(small_trip, "people", "\xE4people"));
    CHECK(
        lines(next_line.problems()) ==
        "t.toml:2:22: error: this cannot be read: Encountered invalid utf-8 sequence (save the file as UTF-8 text)\n");
    const auto huge = read_trip_text(std::string(600000, '#'));
    CHECK(lines(huge.problems()) ==
          "t.toml:1:500001: error: 600000 bytes are too many for a trip file (at most 500000; a trip file is a few "
          "pages of "
          "text)\n");
}

TEST_CASE("hundreds of faults are counted, not listed") {
    std::string text = small_trip;
    for (int i = 0; i < 300; ++i) {
        text += "zz" + std::to_string(i) + " = 1\n";
    }
    const auto result = read_trip_text(text);
    CHECK(!result.ok());
    REQUIRE(result.problems().size() == 101);
    CHECK(result.problems().back().code == problem::Code("more-problems"));
    CHECK(problem::to_line(result.problems().back()) ==
          "t.toml: error: 200 more like these are not listed (mend the first ones and read the file again)");
}
