// SPDX-License-Identifier: MIT
// The program itself, killed while it prints a deck over an earlier one: at any moment of its work, and before any step
// on the disk. HOLDWATER_KILLS=N kills so many times.
#include "cli/program.hpp"
#include "support/run.hpp"
#include "support/tally.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <csignal>
#include <fstream>
#include <random>
#include <thread>

using namespace holdwater::support;
namespace fs = std::filesystem;
using Files = std::map<std::string, std::string>;

namespace {

int kills() {
    const char* const asked = std::getenv("HOLDWATER_KILLS");
    return asked != nullptr ? std::max(std::atoi(asked), 1) : 3;
}

/// The deck of a trip for so many people; `seconds` after its start it is killed, where that is said.
Run print(const fs::path& folder, const std::string& people, const std::map<std::string, std::string>& disk = {},
          const std::string& seconds = "") {
    std::string text = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml");
    const auto at = text.find("\npeople = ");
    text.replace(at, text.find('\n', at + 1) - at, "\npeople = " + people);
    std::ofstream(folder / "day.toml") << text;
    Surroundings with{.folder = folder, .environment = disk};
    if (!disk.empty()) {
        with.environment["LD_PRELOAD"] = std::string(HOLDWATER_BINARY_DIR) + "/tests/libholdwater_failing_disk.so";
    }
    if (seconds.empty()) {
        return run({"cards", "day.toml"}, with);
    }
    with.program = "/usr/bin/timeout";
    return run({"-s", "KILL", seconds, std::string(HOLDWATER_BINARY_DIR) + "/holdwater", "cards", "day.toml"}, with);
}

/// Every file of the one is in the other, byte for byte.
bool part_of(const Files& some, const Files& all) {
    return std::all_of(some.begin(), some.end(), [&](const auto& one) {
        const auto found = all.find(one.first);
        return found != all.end() && found->second == one.second;
    });
}

Files deck_in(const fs::path& folder) {
    Files files = all_below(folder / "out");
    std::erase_if(files, [](const auto& one) { return !one.first.ends_with(".pdf"); });
    return files;
}

}  // namespace

#ifndef HOLDWATER_SANITIZED

TEST_CASE(
    "killed at any moment, the program leaves files of one deck, loses none of the earlier, and the next run is "
    "whole") {
    const auto folder = own_folder("killed-program");
    REQUIRE(good(print(folder, "5").exit));
    const Files other = deck_in(folder);
    fs::remove_all(folder / "out");
    REQUIRE(good(print(folder, "4").exit));
    const Files first = deck_in(folder);
    REQUIRE(first.size() == 2);
    REQUIRE(first != other);
    Tally tally{.harmed = 0};
    std::mt19937 draw(1);
    for (int i = 0; i < kills(); ++i) {
        // Thirteen steps on the disk put two files in place; each comes in turn, and between them any moment at all.
        const std::string step = std::to_string(i / 2 % 14 + 1);
        const std::string seconds = std::to_string(0.01 + static_cast<double>(draw() % 2000) / 1000.0);
        CAPTURE(step);
        CAPTURE(seconds);
        const Run killed =
            i % 2 == 0 ? print(folder, "5", {{"FAILING_DISK_KILLS_AT", step}}) : print(folder, "5", {}, seconds);
        const Files after = deck_in(folder);
        // Files of one deck, and its cards only beside all the rest.
        const bool whole = (part_of(after, first) || part_of(after, other)) &&
                           (!after.contains("day-cards.pdf") || after.size() == first.size());
        const Files all = all_below(folder / "out");
        const auto kept = std::count_if(first.begin(), first.end(), [&](const auto& one) {
            return std::any_of(all.begin(), all.end(), [&](const auto& file) { return file.second == one.second; });
        });
        const bool lost = after != other && kept != 2;
        CHECK((killed.signal == SIGKILL || killed.exit == 137 || good(killed.exit)));
        CHECK(whole);
        CHECK_FALSE(lost);
        REQUIRE(good(print(folder, "4").exit));
        const Files healed = all_below(folder / "out");
        const bool cleared = deck_in(folder) == first && healed.size() == first.size();
        CHECK(cleared);
        ++tally.tried;
        tally.wrong_exits += killed.signal == SIGKILL || killed.exit == 137 || good(killed.exit) ? 0 : 1;
        tally.harmed += whole && !lost && cleared ? 0 : 1;
    }
    record_tally("the program killed", tally);
}

#endif
