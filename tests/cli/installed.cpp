// SPDX-License-Identifier: MIT
// What is installed: a program that finds its data wherever it lies, with manual and completion, and without a path of
// the machine that built it.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace holdwater;
using namespace holdwater::support;

namespace {

int runs(const std::string& line) {
    const int status = std::system(line.c_str());
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

TEST_CASE("an installed program prints a deck from another place, and holds no path of its build") {
    const auto folder = own_folder("installed");
    const auto first = folder / "first";
    REQUIRE(runs("cmake --install '" + std::string(HOLDWATER_BINARY_DIR) + "' --prefix '" + first.string() +
                 "' >/dev/null") == 0);
    const auto moved = folder / "moved";
    std::filesystem::rename(first, moved);
    std::set<std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(moved)) {
        if (!entry.is_regular_file()) {
            continue;
        }
        files.insert(std::filesystem::relative(entry.path(), moved).string());
        const std::string bytes = file_text(entry.path().string());
        CAPTURE(entry.path().string());
        CHECK(bytes.find(HOLDWATER_BINARY_DIR) == std::string::npos);
        CHECK(bytes.find(std::string(HOLDWATER_SOURCE_DIR) + "/src") == std::string::npos);
        CHECK(bytes.find("/build/") == std::string::npos);
    }
    for (const char* name : {"bin/holdwater", "share/man/man1/holdwater.1.gz", "share/man/man5/holdwater-trip.5.gz",
                             "share/bash-completion/completions/holdwater", "share/zsh/vendor-completions/_holdwater",
                             "share/fish/vendor_completions.d/holdwater.fish",
                             "share/holdwater/layouts/trips/quick.toml", "share/holdwater/layouts/schemas/plan.json",
                             "share/doc/holdwater/copyright", "share/doc/holdwater/changelog.gz"}) {
        CAPTURE(name);
        CHECK(files.contains(name));
    }
    const std::string program = "'" + (moved / "bin/holdwater").string() + "'";
    CHECK(runs(program + " schema plan >/dev/null") == 0);
    CHECK(runs(program + " cards " + demo_path("paddling-day") + " --only one --out '" + (folder / "out").string() +
               "' >/dev/null 2>&1") == 0);
    CHECK(std::filesystem::exists(folder / "out/paddling-day-cards.pdf"));
    // The manual that lies there is that of this program.
    CHECK(runs("gzip -dc '" + (moved / "share/man/man1/holdwater.1.gz").string() + "' >'" + (folder / "page").string() +
               "'") == 0);
    CHECK(file_text((folder / "page").string()) == holdwater_says("help --man holdwater", folder).out);
}
