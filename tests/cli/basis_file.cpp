// SPDX-License-Identifier: MIT
// The basis beside the cards: written with them, superseded with them, and as readable as they are.
#include "cli/program.hpp"
#include "support/finding.hpp"

#include <doctest/doctest.h>

#include <fstream>

using namespace holdwater::support;
namespace fs = std::filesystem;

TEST_CASE("cards writes the basis beside the deck with the same stamp, twice the same bytes, on both sheets") {
    for (const char* sheet : {"a4", "letter"}) {
        CAPTURE(std::string(sheet));
        const auto folder = fresh_folder(std::string("basis-") + sheet);
        const std::string arguments =
            "cards " + demo_path("class-day") + " --sheet " + sheet + " --out '" + folder.string() + "'";
        const Said said = holdwater_says(arguments, folder);
        CAPTURE(said.err);
        REQUIRE(good(said.exit));
        const fs::path pdf = folder / "class-day-basis.pdf";
        CHECK(has(said.out, pdf.string()));
        CHECK(has(said.out, "class-day-cards.pdf"));
        const std::string first = file_text(pdf.string());
        REQUIRE(good(holdwater_says(arguments, folder).exit));
        CHECK(first == file_text(pdf.string()));
        CHECK(std::system(("qpdf --check '" + pdf.string() + "' >/dev/null 2>&1").c_str()) == 0);
        const auto text_of = [&](const std::string& name) {
            const std::string text = (folder / "text.txt").string();
            REQUIRE(std::system(("pdftotext -layout '" + (folder / name).string() + "' '" + text + "'").c_str()) == 0);
            return file_text(text);
        };
        const std::string basis = text_of("class-day-basis.pdf");
        for (const char* words :
             {"The trip as understood", "How it was worked out", "The numbers on the cards", "What was assumed",
              "The hand", "Sources", "from memory", "Print, cut, laminate", "Template for the film", "The fill strip",
              "Dip it dry", "If this bar is not 50 mm"}) {
            CAPTURE(std::string(words));
            CHECK(has(basis, words));
        }
        const auto at = basis.find("Basis ") + 6;
        const std::string stamp = basis.substr(at, 9);
        CAPTURE(stamp);
        CHECK(stamp[4] == '-');
        CHECK(has(text_of("class-day-cards.pdf"), stamp));
    }
}

TEST_CASE("a plan that is refused supersedes deck and basis alike, and one that holds again writes both anew") {
    const auto folder = fresh_folder("basis-refused");
    const std::string whole = file_text(std::string(HOLDWATER_SOURCE_DIR) + "/layouts/trips/paddling-day.toml");
    const fs::path trip = folder / "day.toml";
    const fs::path out = folder / "out";
    std::ofstream(trip) << whole;
    const std::string cards = "cards '" + trip.string() + "' --out '" + out.string() + "'";
    REQUIRE(good(holdwater_says(cards, folder).exit));
    REQUIRE(fs::exists(out / "day-basis.pdf"));
    std::ofstream(out / "day-basis-notes.pdf") << "someone else's";
    std::ofstream(out / "another-basis.pdf") << "of another trip";
    std::string cool = whole;
    const auto target = cool.find("target = \"");
    REQUIRE(target != std::string::npos);
    cool.replace(target, cool.find('\n', target) - target, "target = \"50 C\"");
    std::ofstream(trip, std::ios::trunc) << cool;
    const Said said = holdwater_says(cards, folder);
    CHECK(said.exit == 1);
    for (const char* name : {"day-cards.pdf", "day-basis.pdf"}) {
        CAPTURE(std::string(name));
        CHECK_FALSE(fs::exists(out / name));
        CHECK(fs::exists(out / (std::string(name) + ".superseded")));
        CHECK(has(said.out, std::string(name) + ".superseded"));
    }
    CHECK(fs::exists(out / "day-basis-notes.pdf"));
    CHECK(fs::exists(out / "another-basis.pdf"));
    std::ofstream(trip, std::ios::trunc) << whole;
    REQUIRE(good(holdwater_says(cards, folder).exit));
    CHECK(fs::exists(out / "day-cards.pdf"));
    CHECK(fs::exists(out / "day-basis.pdf"));
}
