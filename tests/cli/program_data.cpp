// SPDX-License-Identifier: MIT
// The program without a file that it came with, or with a damaged one: its own fault, which names the file, and never
// that of the user's trip.
#include "cli/program.hpp"
#include "typeface.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater;
using namespace holdwater::support;
namespace fs = std::filesystem;

namespace {

const fs::path built = HOLDWATER_BINARY_DIR;

/// A program of its own with its own data, to be damaged.
struct Copy {
    fs::path folder;
    fs::path data;
    explicit Copy(const std::string& name) : folder(own_folder(name)), data(folder / "share/holdwater") {
        fs::create_directories(data);
        fs::copy_file(built / "holdwater", folder / "holdwater");
        fs::copy(fs::canonical(built / "share/holdwater/layouts"), data / "layouts", fs::copy_options::recursive);
        fs::copy(fs::canonical(built / "share/holdwater/fonts"), data / "fonts", fs::copy_options::recursive);
    }
    Said says(const std::string& arguments) const {
        const std::string out = (folder / "stdout.txt").string();
        const std::string err = (folder / "stderr.txt").string();
        const int status = std::system(
            ("'" + (folder / "holdwater").string() + "' " + arguments + " >'" + out + "' 2>'" + err + "'").c_str());
        return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, file_text(out), file_text(err)};
    }
    Said cards(const std::string& more = "") const {
        return says("cards " + demo_path("class-day") + more + " --out '" + (folder / "out").string() + "'");
    }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

void check_ours(const Said& said, const std::string& file) {
    CAPTURE(said.err);
    CHECK(said.exit == 70);
    CHECK(has(said.err, file));
    CHECK_FALSE(has(said.err, "class-day.toml"));
}

void overwrite(const fs::path& file, const std::string& text) {
    std::ofstream(file, std::ios::trunc) << text;
}

std::string face_file(const std::string& face) {
    return "fonts/" + face + ".ttf";
}

}  // namespace

TEST_CASE("a copy of the program with all its data prints") {
    const Copy copy("data-whole");
    const int exit = copy.cards().exit;
    const bool done = exit == 0 || exit == 3;
    CHECK(done);
}

TEST_CASE("a missing file of the program is its own fault, by name") {
    for (const std::string& file : {std::string("layouts/words/en.toml"), std::string("layouts/formats/hand.toml"),
                                    std::string("layouts/formats/plain.toml"), std::string("layouts/sheets/a4.toml"),
                                    face_file(typeface::regular), face_file(typeface::bold)}) {
        CAPTURE(file);
        const Copy copy("data-missing");
        fs::remove(copy.data / file);
        check_ours(copy.cards(), file);
        CHECK_FALSE(fs::exists(copy.folder / "out" / "class-day-cards.pdf"));
    }
    const Copy copy("data-missing");
    fs::remove_all(copy.data / "layouts");
    check_ours(copy.cards(), "layouts/");
    check_ours(copy.says("plan " + demo_path("class-day")), "layouts/");
    check_ours(copy.says("class --rules us --out '" + (copy.folder / "out").string() + "'"), "layouts/");
    check_ours(copy.says("new '" + (copy.folder / "new.toml").string() + "'"), "trips/template.toml");
}

TEST_CASE("a damaged file of the program is its own fault, by name") {
    for (const char* file : {"layouts/words/en.toml", "layouts/formats/hand.toml", "layouts/formats/plain.toml",
                             "layouts/sheets/a4.toml"}) {
        CAPTURE(std::string(file));
        const std::string whole = file_text((Copy("data-damaged").data / file).string());
        for (const std::string& damaged :
             {std::string("\x01\xff nonsense"), std::string(), whole.substr(0, whole.size() / 2)}) {
            const Copy copy("data-damaged");
            overwrite(copy.data / file, damaged);
            check_ours(copy.cards(), file);
        }
    }
}

TEST_CASE("a damaged typeface is the program's own fault, by name") {
    for (const std::string& file : {face_file(typeface::regular), face_file(typeface::bold)}) {
        CAPTURE(file);
        const std::string whole = file_text((Copy("font-damaged").data / file).string());
        for (const std::string& damaged :
             {std::string("no typeface"), std::string(), whole.substr(0, whole.size() / 2)}) {
            CAPTURE(damaged.size());
            const Copy copy("font-damaged");
            overwrite(copy.data / file, damaged);
            check_ours(copy.cards(), file);
            check_ours(copy.cards(" --preview"), file);
        }
    }
}

TEST_CASE("a wording without a text that a card needs is the program's own fault, by name") {
    const Copy copy("words-lack");
    const fs::path file = copy.data / "layouts/words/en.toml";
    std::string text = file_text(file.string());
    const auto at = text.find("\nwarning = ");
    REQUIRE(at != std::string::npos);
    text.erase(at, text.find('\n', at + 1) - at);
    overwrite(file, text);
    check_ours(copy.cards(), "words/en.toml");
}

TEST_CASE("a sheet that holds no card of the format is refused before anything is planned, with the formats that do") {
    const Copy copy("data-sheet");
    overwrite(copy.data / "layouts/sheets/a4.toml",
              "name = \"a4\"\nwidth_mm = 180\nheight_mm = 150\nmargin_sides_mm = 5\nmargin_top_mm = 5\n"
              "margin_bottom_mm = 8\n");
    const std::string others = "--format pocket or wallet";
    const Said cards = copy.cards(" --format large");
    CAPTURE(cards.err);
    CHECK(cards.exit == 2);
    CHECK(cards.out.empty());
    CHECK(has(cards.err, "does not hold one card of the format large"));
    CHECK(has(cards.err, others));
    const Said lesson = copy.says("class --rules us --format large --out '" + (copy.folder / "class").string() + "'");
    CHECK(lesson.exit == 2);
    CHECK(has(lesson.err, others));
}

TEST_CASE("a deck that finds no room in a format is refused with the formats that print it") {
    const Copy copy("data-format");
    std::string narrow = file_text((copy.data / "layouts/formats/hand.toml").string());
    const std::string width = "width_mm = ";
    narrow.replace(narrow.find(width), narrow.find('\n', narrow.find(width)) - narrow.find(width), width + "60");
    overwrite(copy.data / "layouts/formats/hand.toml", narrow);
    const Said said = copy.cards();
    CAPTURE(said.err);
    CHECK(said.exit == 2);
    CHECK(has(said.err, "for the format hand"));
    CHECK(has(said.err, "it prints with --format pocket, wallet or large"));
}
