// SPDX-License-Identifier: MIT
// Trip files, logs and command lines that must be refused, on the built program: with exit code 2, at their place, with
// what is wrong and what would be right, soon, in little memory, and with nothing written.
#include "cli/program.hpp"

#include "support/cases.hpp"
#include "support/run.hpp"
#include "support/tally.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

// Of the processor, since this may run beside others; a sanitizer multiplies both.
constexpr double most_seconds = 1.0;
#ifdef HOLDWATER_SANITIZED
constexpr double slower = 30.0;
constexpr long most_kilobytes = 4'000'000;
#else
constexpr double slower = 1.0;
constexpr long most_kilobytes = 100'000;
#endif

void write(const fs::path& path, const std::string& text) {
    std::ofstream(path, std::ios::binary) << text;
}

/// A folder with a trip and a log that hold, beside what a case puts there.
fs::path folder_with_good_files(const std::string& name) {
    const auto folder = own_folder(name);
    write(folder / "trip.toml", file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml"));
    write(folder / "log.csv", "time_min,bath_c,note\n0,62,food in\n60,61,\n120,60,\n");
    std::string long_test = "time_min,bath_c,outside_c\n";
    for (int minute = 0; minute <= 2'000; ++minute) {
        long_test += std::to_string(minute) + ",60,8\n";
    }
    write(folder / "log2001.csv", long_test);
    fs::create_directory(folder / "folder");
    return folder;
}

/// Of the lines on standard error, the first error that says it; all of them where none does.
std::string error_that_says(const std::string& err, const std::string& says) {
    std::istringstream lines(err);
    for (std::string line; std::getline(lines, line);) {
        if (line.find("error: ") != std::string::npos && line.find(says) != std::string::npos) {
            return line;
        }
    }
    return err;
}

void check_refused(const Run& run, const Case& one, const std::string& file, Tally& tally) {
    ++tally.tried;
    tally.crashes += run.signal != 0 ? 1 : 0;
    tally.wrong_exits += run.exit != 2 ? 1 : 0;
    tally.slow += run.cpu_s >= slower * most_seconds ? 1 : 0;
    CAPTURE(one.where);
    CAPTURE(one.name);
    const std::string line = error_that_says(run.err, one.says);
    CAPTURE(line.substr(0, 500));
    CHECK(run.signal == 0);
    CHECK(run.exit == 2);
    const std::string place =
        (one.line > 0 ? file + ":" + std::to_string(one.line) + ":" + std::to_string(one.column) : file) + ": error: ";
    if (file.empty()) {
        CHECK(line.find("error: ") != std::string::npos);  // a line of words has no places
    } else {
        CHECK(line.substr(0, place.size()) == place);
    }
    CHECK(line.find(one.says) != std::string::npos);
    CHECK(line.ends_with(")"));  // what would be right
    CHECK(line.size() < 1'000);
    CHECK(std::none_of(run.err.begin(), run.err.end(),
                       [](char c) { return (c >= 0 && c < ' ' && c != '\n') || c == '\x7f'; }));
    CHECK(run.cpu_s < slower * most_seconds);
    CHECK(run.kilobytes < most_kilobytes);
}

}  // namespace

TEST_CASE("every bad trip file is refused at its place, soon, and writes nothing") {
    const auto folder = folder_with_good_files("bad-trips");
    const auto cases = cases_in("trips.txt");
    Tally tally{.slow = 0, .harmed = 0};
    CHECK(cases.size() >= 350);
    for (const Case& one : cases) {
        write(folder / "case.toml", one.text);
        const auto before = all_below(folder);
        check_refused(run({"cards", "case.toml"}, {.folder = folder}), one, "case.toml", tally);
        const bool untouched = all_below(folder) == before;
        tally.harmed += untouched ? 0 : 1;
        CHECK(untouched);
    }
    record_tally("bad trip files", tally);
}

TEST_CASE("every bad log is refused at its place, soon, and writes nothing") {
    const auto folder = folder_with_good_files("bad-logs");
    const auto cases = cases_in("logs.txt");
    Tally tally{.slow = 0, .harmed = 0};
    CHECK(cases.size() >= 60);
    for (const Case& one : cases) {
        write(folder / "case.csv", one.text);
        const auto before = all_below(folder);
        check_refused(run({"review", "trip.toml", "case.csv", "--preview"}, {.folder = folder}), one, "case.csv",
                      tally);
        const bool untouched = all_below(folder) == before;
        tally.harmed += untouched ? 0 : 1;
        CHECK(untouched);
    }
    record_tally("bad logs", tally);
}

TEST_CASE("every bad command line is refused, soon, and writes nothing") {
    const auto folder = folder_with_good_files("bad-lines");
    const auto before = all_below(folder);
    const auto cases = cases_in("lines.txt");
    Tally tally{.slow = 0, .harmed = 0};
    CHECK(cases.size() >= 90);
    for (const Case& one : cases) {
        check_refused(run(words_of(one.text), {.folder = folder}), one, one.line > 0 ? "log2001.csv" : "", tally);
        const bool untouched = all_below(folder) == before;
        tally.harmed += untouched ? 0 : 1;
        CHECK(untouched);
    }
    record_tally("bad command lines", tally);
}
