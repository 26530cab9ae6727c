// SPDX-License-Identifier: MIT
// A set of files is there as a whole, or the earlier one is: killed before any step, on a disk that is full at any
// byte, in a folder that cannot be written, and beside another run. HOLDWATER_FILES=N does the last three N times as
// often.
#include "cli/program.hpp"
#include "support/run.hpp"
#include "support/tally.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <thread>

using namespace holdwater::support;
namespace fs = std::filesystem;
using Files = std::map<std::string, std::string>;

namespace {

const fs::path put_set = fs::path(HOLDWATER_BINARY_DIR) / "tests/put_set";
constexpr int bytes_each = 3'000;

int times() {
    const char* const asked = std::getenv("HOLDWATER_FILES");
    return asked != nullptr ? std::max(std::atoi(asked), 1) : 1;
}

/// Of the folder: what stands under a name that whoever prints would take.
Files valid(const Files& all) {
    Files found;
    for (const auto& [name, text] : all) {
        if (name.ends_with(".pdf") || name.ends_with(".png")) {
            found[name] = text;
        }
    }
    return found;
}

bool any_part(const Files& all) {
    return std::any_of(all.begin(), all.end(), [](const auto& one) { return one.first.ends_with(".part"); });
}

/// "first" of "firstfirstfir": which run wrote it.
std::set<std::string> runs_in(const Files& files) {
    std::set<std::string> runs;
    for (const auto& [name, text] : files) {
        runs.insert(text.substr(0, 5));
    }
    return runs;
}

Run put(const fs::path& folder, const std::string& text, int pictures,
        const std::map<std::string, std::string>& disk = {}) {
    Surroundings with;
    with.program = put_set;
    with.environment = disk;
    if (!disk.empty()) {
        with.environment["LD_PRELOAD"] = std::string(HOLDWATER_BINARY_DIR) + "/tests/libholdwater_failing_disk.so";
    }
    return run({folder.string(), text, std::to_string(pictures), std::to_string(bytes_each)}, with);
}

/// A folder with a whole earlier set, and what it holds.
Files fresh_set(const fs::path& folder) {
    fs::remove_all(folder);
    fs::create_directories(folder);
    REQUIRE(put(folder, "first", 2).exit == 0);
    const Files all = all_below(folder);
    REQUIRE(all.size() == 4);
    return all;
}

}  // namespace

// A sanitizer must be loaded first, which the failing disk is.
#ifndef HOLDWATER_SANITIZED

TEST_CASE("killed before any step, a run leaves one whole set or the files of it, loses nothing, and is cleared up") {
    const auto folder = own_folder("killed") / "out";
    int steps = 0;
    for (bool killed = true; killed; ++steps) {
        CAPTURE(steps);
        REQUIRE(steps < 200);
        const Files before = fresh_set(folder);
        const Run second = put(folder, "other", 3, {{"FAILING_DISK_KILLS_AT", std::to_string(steps + 1)}});
        killed = second.signal == SIGKILL;
        REQUIRE((killed || second.exit == 0));
        const Files after = all_below(folder);
        // Never files of two runs under names that are taken for valid.
        CHECK(runs_in(valid(after)).size() <= 1);
        // And the cards only where the rest of their set is.
        const Files valid_now = valid(after);
        CHECK((!valid_now.contains("camp-cards.pdf") ||
               valid_now.size() == (valid_now.at("camp-cards.pdf").starts_with("first") ? 4 : 5)));
        // The earlier bytes are there under some name until the new ones are.
        const bool new_whole = valid(after).size() == 5 && runs_in(valid(after)) == std::set<std::string>{"other"};
        const auto kept = std::count_if(after.begin(), after.end(), [](const auto& one) {
            return one.second.starts_with("first") && one.second.size() >= bytes_each;
        });
        CHECK((new_whole || kept == 4));
        // A next run that fails too changes nothing for the worse: the earlier set stands again.
        if (killed && !new_whole) {
            const Run full = put(folder, "third", 3, {{"FAILING_DISK_HOLDS", "100"}});
            CHECK(full.exit == 2);
            const Files healed = all_below(folder);
            for (const auto& [name, text] : before) {
                CHECK(healed.contains(name));
                CHECK((healed.contains(name) && healed.at(name) == text));
            }
        }
        CHECK(put(folder, "third", 3).exit == 0);
        const Files good = all_below(folder);
        CHECK_FALSE(any_part(good));
        CHECK(valid(good).size() == 5);
        CHECK(runs_in(valid(good)) == std::set<std::string>{"third"});
    }
    CHECK(steps > 20);  // each of five files is opened, written, synced, renamed
    MESSAGE("killed before each of " << steps - 1 << " steps");
}

TEST_CASE("on a disk that is full at any byte the earlier set stays as it was") {
    const auto folder = own_folder("full") / "out";
    const Files before = fresh_set(folder);
    const int sizes = 100 * times();
    Tally tally{.harmed = 0};
    for (int i = 0; i < sizes; ++i) {
        const int room = i * (5 * bytes_each) / sizes;
        CAPTURE(room);
        const Run second = put(folder, "other", 3, {{"FAILING_DISK_HOLDS", std::to_string(room)}});
        CHECK(second.exit == 2);
        CHECK(second.err.find("No space left") != std::string::npos);
        CHECK(second.err.find("make room") != std::string::npos);
        const bool untouched = all_below(folder) == before;
        CHECK(untouched);
        ++tally.tried;
        tally.crashes += second.signal != 0 ? 1 : 0;
        tally.wrong_exits += second.exit != 2 ? 1 : 0;
        tally.harmed += untouched ? 0 : 1;
    }
    record_tally("a set on a full disk", tally);
    CHECK(put(folder, "other", 3, {{"FAILING_DISK_HOLDS", std::to_string(10 * bytes_each)}}).exit == 0);
}

TEST_CASE("two runs into one folder at once leave the set of one of them") {
    const auto folder = own_folder("two") / "out";
    Tally tally{.harmed = 0};
    for (int i = 0; i < 10 * times(); ++i) {
        fresh_set(folder);
        const std::map<std::string, std::string> slow{{"FAILING_DISK_WAITS", "2000"}};
        Run a;
        Run b;
        std::thread other([&] { a = put(folder, "runAA", 3, slow); });
        b = put(folder, "runBB", 3, slow);
        other.join();
        CHECK(a.exit == 0);
        CHECK(b.exit == 0);
        const Files after = all_below(folder);
        CHECK(valid(after).size() == 5);
        CHECK(runs_in(valid(after)).size() == 1);
        CHECK_FALSE(any_part(after));
        const bool whole = valid(after).size() == 5 && runs_in(valid(after)).size() == 1 && !any_part(after);
        ++tally.tried;
        tally.wrong_exits += a.exit != 0 || b.exit != 0 ? 1 : 0;
        tally.harmed += whole ? 0 : 1;
    }
    record_tally("two writers at once", tally);
}

TEST_CASE("of two runs that make one trip file at once, one is told that it is there") {
    for (int i = 0; i < 5 * times(); ++i) {
        const auto folder = own_folder("two-new");
        Surroundings slow{.folder = folder};
        slow.environment = {{"FAILING_DISK_WAITS", "3000"},
                            {"LD_PRELOAD", std::string(HOLDWATER_BINARY_DIR) + "/tests/libholdwater_failing_disk.so"}};
        Run a;
        std::thread other([&] { a = run({"new", "day.toml"}, slow); });
        const Run b = run({"new", "day.toml"}, slow);
        other.join();
        CHECK(std::min(a.exit, b.exit) == 0);
        CHECK(std::max(a.exit, b.exit) == 2);
        CHECK(all_below(folder).size() == 1);
    }
}

#endif

TEST_CASE("a file that may not grow as large as it must is refused, and the earlier one stays") {
    const auto folder = own_folder("limited") / "out";
    const Files before = fresh_set(folder);
    for (const long most : {0L, 1L, 1'000L, static_cast<long>(bytes_each) - 1}) {
        CAPTURE(most);
        Surroundings with;
        with.program = put_set;
        with.most_file_bytes = most;
        const Run second = run({folder.string(), "other", "3", std::to_string(bytes_each)}, with);
        CHECK(second.exit == 2);
        CHECK(second.err.find("File too large") != std::string::npos);
        CHECK(all_below(folder) == before);
    }
}

TEST_CASE("what cannot be written says where and what would be right, and what is there stays") {
    const auto folder = own_folder("nowhere");
    std::ofstream(folder / "file") << "x";
    fs::create_directories(folder / "log-review.png");
    std::ofstream(folder / "trip.toml") << file_text(std::string(HOLDWATER_SOURCE_DIR) +
                                                     "/layouts/trips/class-day.toml");
    std::ofstream(folder / "log.csv") << "time_min,bath_c,note\n0,62,food in\n60,61,\n120,60,\n";
    const auto before = all_below(folder);
    // The kernel's own folder takes no file even from root.
    for (const char* out : {"file", "file/sub", "/proc/holdwater", "/dev/null"}) {
        CAPTURE(std::string(out));
        const Run chart = run({"gauge", "log.csv", "--water", "20 L", "--outside", "8 C", "--preview", "--out", out},
                              {.folder = folder});
        CAPTURE(chart.err);
        CHECK(chart.exit == 2);
        CHECK(chart.err.find(": error: ") != std::string::npos);
        CHECK((chart.err.ends_with("?)\n") || chart.err.ends_with("into)\n")));
        CHECK(all_below(folder) == before);
    }
    const Run in_the_way = run({"review", "trip.toml", "log.csv", "--preview", "--out", "."}, {.folder = folder});
    CHECK(in_the_way.err.find("log-review.png: error: cannot be written: Is a directory") != std::string::npos);
    CHECK(all_below(folder) == before);
    if (::geteuid() != 0) {  // root may write everywhere
        fs::create_directory(folder / "closed");
        fs::permissions(folder / "closed", fs::perms::owner_read | fs::perms::owner_exec);
        const Run closed = run({"new", "closed/x.toml"}, {.folder = folder});
        CHECK(closed.exit == 2);
        CHECK(closed.err.find("closed/x.toml: error: cannot be written: Permission denied") != std::string::npos);
    }
}
