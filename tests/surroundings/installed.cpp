// SPDX-License-Identifier: MIT
// The program wherever it was put: with its data beside it, by a link, in a folder with any name; and without its data,
// where it names what is missing, says what to do and prints nothing to cook from.
#include "cli/program.hpp"
#include "support/run.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const fs::path built = HOLDWATER_BINARY_DIR;
const std::string trip = std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/class-day.toml";

/// As `cmake --install` puts it: bin/holdwater and share/holdwater.
fs::path installed_in(const fs::path& prefix) {
    fs::create_directories(prefix / "bin");
    fs::create_directories(prefix / "share/holdwater");
    fs::copy_file(built / "holdwater", prefix / "bin/holdwater");
    for (const char* part : {"layouts", "fonts"}) {
        fs::copy(fs::canonical(built / "share/holdwater" / part), prefix / "share/holdwater" / part,
                 fs::copy_options::recursive);
    }
    return prefix / "bin/holdwater";
}

Run hold_by(const fs::path& program, const fs::path& folder) {
    return run(
        {"hold", "--kind", "pork-loin", "--shape", "round", "--thickness", "60 mm", "--bath", "62 C", "--start", "5 C"},
        {.folder = folder, .program = program});
}

}  // namespace

TEST_CASE("moved with its data to a folder of any name, or called by a link, it answers as before") {
    const auto folder = own_folder("moved");
    const Run here = hold_by(built / "holdwater", folder);
    REQUIRE(good(here.exit));
    const fs::path first = folder / "first prefix";
    installed_in(first);
    for (const char* name : {"b\xC3\xB6x of 'tools'", "\xFF not UTF-8", "with\nline"}) {
        const fs::path moved = folder / name;
        fs::rename(folder / "first prefix", moved);
        CHECK(run({"new", "trip.toml"}, {.folder = moved, .program = moved / "bin/holdwater"}).exit == 0);  // its data
        fs::remove(moved / "trip.toml");
        const Run there = hold_by(moved / "bin/holdwater", folder);
        CHECK(there.exit == here.exit);
        CHECK(there.out == here.out);
        fs::create_symlink(moved / "bin/holdwater", folder / "link");
        CHECK(hold_by(folder / "link", folder).out == here.out);
        fs::remove(folder / "link");
        fs::rename(moved, folder / "first prefix");
    }
}

TEST_CASE("without its data, or with something else in their place, it names it, says what to do and plans nothing") {
    const auto folder = own_folder("stripped");
    struct Harm {
        const char* what;
        void (*done)(const fs::path& data);
        const char* named;
    };
    const Harm harms[] = {
        {"no data at all", [](const fs::path& data) { fs::remove_all(data); }, "fonts/"},
        {"no layouts", [](const fs::path& data) { fs::remove_all(data / "layouts"); }, "layouts/"},
        {"no fonts", [](const fs::path& data) { fs::remove_all(data / "fonts"); }, "fonts/"},
        {"a file for layouts",
         [](const fs::path& data) {
             fs::remove_all(data / "layouts");
             std::ofstream(data / "layouts") << "x";
         },
         "layouts/"},
        {"a folder for a wording",
         [](const fs::path& data) {
             fs::remove(data / "layouts/words/en.toml");
             fs::create_directory(data / "layouts/words/en.toml");
         },
         "layouts/words/en.toml"},
        {"a device for a format",
         [](const fs::path& data) {
             fs::remove(data / "layouts/formats/hand.toml");
             fs::create_symlink("/dev/zero", data / "layouts/formats/hand.toml");
         },
         "layouts/formats/hand.toml"},
        {"a link to itself",
         [](const fs::path& data) {
             fs::remove(data / "layouts/formats/hand.toml");
             fs::create_symlink("hand.toml", data / "layouts/formats/hand.toml");
         },
         "layouts/formats/hand.toml"},
        {"a format of 6 MB",
         [](const fs::path& data) { std::ofstream(data / "layouts/formats/hand.toml") << std::string(6'000'000, '#'); },
         "layouts/formats/hand.toml"},
    };
    for (const Harm& harm : harms) {
        CAPTURE(std::string(harm.what));
        const fs::path prefix = folder / "prefix";
        fs::remove_all(prefix);
        const fs::path program = installed_in(prefix);
        harm.done(prefix / "share/holdwater");
        const Run cards = run({"cards", trip, "--out", "out"}, {.folder = folder, .program = program});
        CAPTURE(cards.err);
        CHECK(cards.exit == 70);
        CHECK(cards.signal == 0);
        CHECK(cards.out.empty());
        CHECK(cards.err.find(harm.named) != std::string::npos);
        CHECK(cards.err.find("error: ") != std::string::npos);
        CHECK(cards.err.ends_with(")\n"));
        CHECK_FALSE(fs::exists(folder / "out"));
    }
}
