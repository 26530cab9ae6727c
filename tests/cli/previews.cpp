// SPDX-License-Identifier: MIT
// Previews by day, by a red lamp and in dim light.
#include "cli/program.hpp"

#include <doctest/doctest.h>

#include <set>

using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

std::set<std::string> names_in(const fs::path& folder) {
    std::set<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder)) {
        names.insert(entry.path().filename().string());
    }
    return names;
}

}  // namespace

TEST_CASE("lamp and dim light change the pictures of --preview, not their names nor the PDF") {
    const auto folder = fresh_folder("previews");
    const std::string cards = "cards " + demo_path("paddling-day") + " --only fill --preview --out ";
    for (const auto& [name, light] :
         {std::pair{"day", ""}, std::pair{"red", " --lamp red"}, std::pair{"dim", " --dim"},
          std::pair{"both", " --lamp red --dim"}, std::pair{"again", " --dim --lamp red"}}) {
        const int exit = holdwater_says(cards + "'" + (folder / name).string() + "'" + light, folder).exit;
        const bool done = exit == 0 || exit == 3;
        CHECK(done);
    }
    const auto names = names_in(folder / "day");
    CHECK(names.contains("paddling-day-card-1.png"));
    CHECK(names.contains("paddling-day-card-sheet.png"));
    for (const char* other : {"red", "dim", "both", "again"}) {
        CAPTURE(other);
        CHECK(names_in(folder / other) == names);
        CHECK(file_text((folder / "day" / "paddling-day-cards.pdf").string()) ==
              file_text((folder / other / "paddling-day-cards.pdf").string()));
        for (const std::string& name : names) {
            if (name.ends_with(".png")) {
                CHECK(file_text((folder / "day" / name).string()) != file_text((folder / other / name).string()));
            }
        }
    }
    for (const std::string& name : names) {
        CHECK(file_text((folder / "both" / name).string()) == file_text((folder / "again" / name).string()));
        if (name.ends_with(".png")) {
            CHECK(file_text((folder / "both" / name).string()) != file_text((folder / "red" / name).string()));
            CHECK(file_text((folder / "both" / name).string()) != file_text((folder / "dim" / name).string()));
        }
    }
}

TEST_CASE("other light without --preview is wrong usage, and so is a lamp that is not known") {
    const auto folder = fresh_folder("previews-refused");
    const std::string cards =
        "cards " + demo_path("paddling-day") + " --only fill --out '" + (folder / "out").string() + "' ";
    for (const char* light : {"--lamp red", "--dim"}) {
        const Said said = holdwater_says(cards + light, folder);
        CHECK(said.exit == 2);
        CHECK(said.err.find("--preview") != std::string::npos);
        CHECK(said.err.find(std::string(light).substr(0, 5)) != std::string::npos);
    }
    const Said said = holdwater_says(cards + "--preview --lamp green", folder);
    CHECK(said.exit == 2);
    CHECK(said.err.find("green") != std::string::npos);
    CHECK(said.err.find("red") != std::string::npos);
    CHECK_FALSE(fs::exists(folder / "out"));
}
