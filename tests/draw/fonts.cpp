// SPDX-License-Identifier: MIT
// The faces made in the build, and what is measured from them.
#include "support/near.hpp"
#include "support/printing.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using layout::Weight;
using support::near_abs;
using support::real_measure;

TEST_CASE("advances: B612 has figures of 0.65 em and a space of 0.35 em, in both faces alike") {
    // print.md 7.1, measured on the font files: digits 1300, space 700 of 2000 units.
    constexpr double em10 = 10.0 * 25.4 / 72.0;
    for (const Weight face : {Weight::regular, Weight::bold}) {
        for (const char* digit : {"0", "1", "5", "9"}) {
            CHECK(near_abs(real_measure().width(digit, face, 10.0), 0.65 * em10, 1e-9));
        }
        CHECK(near_abs(real_measure().width(" ", face, 10.0), 0.35 * em10, 1e-9));
        CHECK(near_abs(real_measure().width("\u00A0", face, 10.0), 0.35 * em10, 1e-9));
        CHECK(real_measure().width("", face, 10.0) == 0.0);
        // No kerning: a text is as wide as its letters.
        const double whole = real_measure().width("AVATAR", face, 12.0);
        double sum = 0.0;
        for (const char* letter : {"A", "V", "A", "T", "A", "R"}) {
            sum += real_measure().width(letter, face, 12.0);
        }
        CHECK(near_abs(whole, sum, 1e-9));
        CHECK(near_abs(real_measure().width("AVATAR", face, 24.0), 2.0 * whole, 1e-9));
    }
}

TEST_CASE("coverage: what cards use is there, what is not there is known") {
    for (const Weight face : {Weight::regular, Weight::bold}) {
        CHECK(real_measure().covers("71 °C ± ½ ≤ ≥ ≈ × − – — · → ← é ñ ü ß „“", face));
        CHECK_FALSE(real_measure().covers("■", face));
        CHECK_FALSE(real_measure().covers("ł", face));
        CHECK_FALSE(real_measure().covers("snow \u2603\u2009", face));
        CHECK_FALSE(real_measure().covers("broken \xC3", face));
        CHECK_FALSE(real_measure().covers("overlong \xC0\xAF", face));
    }
}

TEST_CASE("a typeface that is not there is an error that says which") {
    auto files = support::fonts();
    files.bold += ".gone";
    const auto made = draw::open_measure(files);
    CHECK_FALSE(made.ok());
    CHECK(made.problems()[0].code == problem::Code("font-unreadable"));
    CHECK(made.problems()[0].message.find(".gone") != std::string::npos);
    const support::Scratch scratch("font");
    files.bold = scratch.write("no.ttf", "this is no font");
    CHECK_FALSE(draw::open_measure(files).ok());
    CHECK_FALSE(draw::to_png(layout::Page{10.0, 10.0, "", {}}, files, 72.0).ok());
    CHECK_FALSE(draw::to_pdf({layout::Page{100.0, 100.0, "", {}}}, files, {}).ok());
}

TEST_CASE("making the faces again gives the same bytes, and their licence lies beside them") {
    const support::Scratch scratch("faces");
    const std::string script = std::string(HOLDWATER_SOURCE_DIR) + "/fonts/make_truetype.py";
    const auto ran = support::run("/usr/bin/python3 -I " + script + " /usr/share/fonts/opentype/b612/B612-Bold.otf " +
                                  scratch.path("b.ttf"));
    REQUIRE(ran.status == 0);
    const std::string again = support::read_file(scratch.path("b.ttf"));
    CHECK(again.size() > 50000);
    CHECK(again == support::read_file(support::fonts().bold));
    const std::string licence = support::read_file(std::string(HOLDWATER_FONT_DIR) + "/LICENCE-B612.txt");
    CHECK(licence.find("SIL OPEN FONT LICENSE") != std::string::npos);
}

TEST_CASE("with the real faces the sample deck passes every check, in each format that is to hold it") {
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(std::string(name));
        const auto format = support::format(name);
        const auto made = layout::lay_out(support::sample_deck(), format, real_measure());
        for (const auto& one : made.problems()) {
            CHECK_MESSAGE(one.severity == problem::Severity::note, problem::to_line(one));
        }
        REQUIRE(made.ok());
        CHECK(layout::check_faces(*made, format, real_measure()).empty());
    }
}

TEST_CASE("the head of each sheet fits it") {
    for (const char* sheet_name : {"a4", "letter"}) {
        const auto sheet = support::sheet(sheet_name);
        const auto pages = layout::impose(support::sample_faces("hand"), support::format("hand"), sheet,
                                          layout::Sides::duplex, 1, support::sample_deck().title, real_measure());
        REQUIRE(pages.ok());
        for (const auto& page : *pages) {
            for (const auto& text : support::texts(page)) {
                CHECK(text.x >= sheet.margin_sides);
                CHECK(text.x + text.width <= sheet.width - sheet.margin_sides);
            }
        }
    }
}
