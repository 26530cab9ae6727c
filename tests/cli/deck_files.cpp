// SPDX-License-Identifier: MIT
// The files of a deck as one set: which are its own, how they replace an earlier set, and what a killed run leaves.
#include "cli/files/deck_files.hpp"

#include "cli/program.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <fstream>
#include <map>

using namespace holdwater;
using support::file_text;
namespace fs = std::filesystem;

namespace {

void write(const fs::path& path, const std::string& text) {
    std::ofstream(path) << text;
}

/// Each file of a folder and what it holds.
std::map<std::string, std::string> all_in(const fs::path& folder) {
    std::map<std::string, std::string> found;
    for (const auto& entry : fs::directory_iterator(folder)) {
        found[entry.path().filename().string()] = entry.is_directory() ? "a folder" : file_text(entry.path().string());
    }
    return found;
}

cli::DeckFiles camp_in(const fs::path& folder) {
    return {folder.string(), "camp", "basis"};
}

/// The bytes say of which run they are.
std::vector<cli::Finished> set_of(const cli::DeckFiles& deck, const std::string& run, int pictures = 0) {
    std::vector<cli::Finished> files{{deck.path("cards.pdf"), run}, {deck.path("basis.pdf"), run}};
    for (int i = 1; i <= pictures; ++i) {
        files.push_back({deck.path("card-" + std::to_string(i) + ".png"), run});
    }
    if (pictures > 0) {
        files.push_back({deck.path("card-sheet.png"), run});
    }
    return files;
}

}  // namespace

TEST_CASE("a deck owns exactly the files that its runs write") {
    const cli::DeckFiles camp{"out", "camp", "basis"};
    for (const char* own :
         {"camp-cards.pdf", "camp-basis.pdf", "camp-card-1.png", "camp-card-12.png", "camp-card-sheet.png"}) {
        CAPTURE(std::string(own));
        CHECK(camp.own(own));
    }
    for (const char* foreign :
         {"camp-cardiff-cards.pdf", "camp-cardiff-basis.pdf", "camp-cardiff-card-1.png", "camp-cards.pdf.superseded",
          "camp-card-.png", "camp-card-1a.png", "camp-card-one.png", "camp-cards.png", "camp-card-1.pdf", "camp.toml",
          "camp-sheets.pdf", "base-camp-cards.pdf", "camp", "camp-card-card-1.png"}) {
        CAPTURE(std::string(foreign));
        CHECK_FALSE(camp.own(foreign));
    }
    CHECK(cli::DeckFiles{"out", "class", "sheets"}.own("class-sheets.pdf"));
}

TEST_CASE("a refusal of one deck leaves one whose name begins alike as it is") {
    const auto folder = support::own_folder("deck-alike");
    for (const char* name : {"camp-cards.pdf", "camp-basis.pdf", "camp-card-1.png", "camp-card-sheet.png",
                             "camp-cardiff-cards.pdf", "camp-cardiff-basis.pdf", "camp-cardiff-card-1.png"}) {
        write(folder / name, "x");
    }
    const cli::Superseded made = cli::supersede(camp_in(folder));
    CHECK(made.problems.empty());
    CHECK(made.renamed.size() == 4);
    const auto left = all_in(folder);
    CHECK(left.size() == 7);
    CHECK(left.contains("camp-cards.pdf.superseded"));
    CHECK(left.contains("camp-card-sheet.png.superseded"));
    CHECK(left.contains("camp-cardiff-cards.pdf"));
    CHECK(left.contains("camp-cardiff-basis.pdf"));
    CHECK(left.contains("camp-cardiff-card-1.png"));
}

TEST_CASE("a new set replaces the earlier one; pictures that it does not have no longer stand under valid names") {
    const auto folder = support::own_folder("deck-again");
    const auto camp = camp_in(folder);
    REQUIRE(cli::put_in_place(camp, set_of(camp, "first", 3)).ok());
    const auto second = cli::put_in_place(camp, set_of(camp, "second", 2));
    REQUIRE(second.ok());
    CHECK(second->renamed == std::vector<std::string>{camp.path("card-3.png.superseded")});
    CHECK(all_in(folder) == std::map<std::string, std::string>{{"camp-basis.pdf", "second"},
                                                               {"camp-card-1.png", "second"},
                                                               {"camp-card-2.png", "second"},
                                                               {"camp-card-3.png.superseded", "first"},
                                                               {"camp-card-sheet.png", "second"},
                                                               {"camp-cards.pdf", "second"}});
    const auto third = cli::put_in_place(camp, set_of(camp, "third"));
    REQUIRE(third.ok());
    CHECK(third->renamed.size() == 3);
    CHECK_FALSE(all_in(folder).contains("camp-card-1.png"));
}

TEST_CASE("where one file cannot be put in place, the whole earlier set stays") {
    const auto folder = support::own_folder("deck-stuck");
    const auto camp = camp_in(folder);
    REQUIRE(cli::put_in_place(camp, set_of(camp, "first")).ok());
    fs::create_directory(folder / "camp-card-sheet.png");
    const auto before = all_in(folder);
    const auto second = cli::put_in_place(camp, set_of(camp, "second", 1));
    REQUIRE_FALSE(second.ok());
    CHECK(support::has_code(second.problems(), "file-unwritable"));
    CHECK(all_in(folder) == before);
}

TEST_CASE("what a killed run left half is removed by the next, what a run at work is writing is not") {
    const auto folder = support::own_folder("deck-killed");
    const auto camp = camp_in(folder);
    const std::string nobody = "99999999";  // above the highest number that a process can have
    for (const std::string& name : {"camp-cards.pdf." + nobody + ".part", "camp-basis.pdf.old." + nobody + ".part",
                                    "camp-card-7.png." + nobody + ".part"}) {
        write(folder / name, name.find(".old.") == std::string::npos ? "half" : "put aside");
    }
    const std::string at_work = "camp-cards.pdf." + std::to_string(getpid()) + ".part";
    const std::string of_another = "camp-cardiff-cards.pdf." + nobody + ".part";
    const std::string by_hand = "camp-cards.pdf.mine.part";
    for (const std::string& name : {at_work, of_another, by_hand}) {
        write(folder / name, "not ours to remove");
    }
    SUBCASE("by a refusal") {
        cli::supersede(camp);
    }
    SUBCASE("by a new set") {
        REQUIRE(cli::put_in_place(camp, {}).ok());
    }
    const auto left = all_in(folder);
    CHECK(left.contains(at_work));
    CHECK(left.contains(of_another));
    CHECK(left.contains(by_hand));
    // An earlier file that the killed run had put aside has come back, and is the earlier one of this run.
    CHECK(left.at("camp-basis.pdf.superseded") == "put aside");
    CHECK(left.size() == 4);
}
