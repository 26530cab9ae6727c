// SPDX-License-Identifier: MIT
// Many trips in one run: none stops another, all of them are said in order, and a line tells how they came out.
#include "cli/files/many_trips.hpp"

#include "cli/program.hpp"
#include "trip/keys.hpp"

#include <doctest/doctest.h>

#include <csignal>
#include <cstdlib>
#include <fstream>
#include <stdexcept>

using namespace holdwater;
using namespace holdwater::support;

namespace {

std::string file_of(const std::filesystem::path& folder, const std::string& name, const std::string& text) {
    std::ofstream(folder / name) << text;
    return " '" + (folder / name).string() + "'";
}

std::string with(std::string text, const std::string& from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
}

}  // namespace

TEST_CASE("of several trips a refused one, a wrong one and one that is not there stop no other") {
    const auto folder = own_folder("many");
    const std::string good(trip::shortest_trip());
    const std::string trips = file_of(folder, "boar.toml", with(good, "kind = \"pork-loin\"", "kind = \"wild-boar\"")) +
                              file_of(folder, "wrong.toml", with(good, "water = \"30 L\"", "water = \"30\"")) + " '" +
                              (folder / "none.toml").string() + "'" + file_of(folder, "one.toml", good) +
                              file_of(folder, "two.toml", with(good, "pieces = 2", "pieces = 1"));
    const std::string out = " --out '" + (folder / "out").string() + "'";
    const Said said = holdwater_says("cards" + trips + out, folder);
    CHECK(said.exit == 2);
    CHECK(std::filesystem::exists(folder / "out/one-cards.pdf"));
    CHECK(std::filesystem::exists(folder / "out/two-cards.pdf"));
    CHECK_FALSE(std::filesystem::exists(folder / "out/boar-cards.pdf"));
    CHECK(said.err.find("wrong.toml:") != std::string::npos);
    CHECK(said.err.find("none.toml") != std::string::npos);
    const auto summary = said.out.rfind("5 trips: 2 printed; 2 of these to be checked: ");
    REQUIRE(summary != std::string::npos);
    const std::string last = said.out.substr(summary);
    CHECK(last.find("1 refused: " + (folder / "boar.toml").string()) != std::string::npos);
    CHECK(last.find("2 with a fault in their input: " + (folder / "none.toml").string()) != std::string::npos);
    CHECK(said.out.find("one-cards.pdf") < said.out.find("two-cards.pdf"));
    // However many at a time, the same is said in the same order, and the same is written.
    const std::string deck = file_text((folder / "out/two-cards.pdf").string());
    const Said at_once = holdwater_says("cards --jobs 4" + trips + out, folder);
    CHECK(at_once.exit == said.exit);
    CHECK(at_once.out == said.out);
    CHECK(at_once.err == said.err);
    CHECK(file_text((folder / "out/two-cards.pdf").string()) == deck);
}

TEST_CASE("a trip that brings its process down is our own fault and stops no other") {
    const auto exits = [](const std::string& trip) {
        if (trip == "falls") {
            std::raise(SIGKILL);
        }
        if (trip == "throws") {
            throw std::runtime_error("no plan");
        }
        return trip == "refused" ? cli::Exit::refused : cli::Exit::done;
    };
    CHECK(cli::each_trip({"a", "falls", "b"}, 1, exits) == cli::Exit::our_fault);
    CHECK(cli::each_trip({"a", "throws", "b"}, 3, exits) == cli::Exit::our_fault);
    CHECK(cli::each_trip({"a", "refused", "b"}, 2, exits) == cli::Exit::refused);
    CHECK(cli::each_trip({"a", "b"}, 64, exits) == cli::Exit::done);
}

TEST_CASE("a thousand trips leave no file open and no process behind") {
    std::vector<std::string> trips;
    for (int i = 0; i < 1000; ++i) {
        trips.push_back(std::to_string(i));
    }
    const auto open_files = [] {
        return std::distance(std::filesystem::directory_iterator("/proc/self/fd"),
                             std::filesystem::directory_iterator());
    };
    const auto before = open_files();
    CHECK(cli::each_trip(trips, 8, [](const std::string&) { return cli::Exit::done; }) == cli::Exit::done);
    CHECK(open_files() == before);
}

TEST_CASE("how many at a time is a whole number from 1 on") {
    const auto folder = own_folder("many-faults");
    CHECK(holdwater_says("cards a.toml --jobs 0", folder).exit == 2);
    CHECK(holdwater_says("cards a.toml --jobs many", folder).err.find("--jobs") != std::string::npos);
}
