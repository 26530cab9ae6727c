// SPDX-License-Identifier: MIT
// The faces made in the build, and what is measured from them.
#include "draw/font.hpp"
#include "support/page_near.hpp"
#include "support/printing.hpp"
#include "support/problems.hpp"
#include "typeface.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string_view>
#include <vector>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using layout::Weight;
using support::near_abs;
using support::real_measure;

namespace {

/// How far an outline reaches above and below its foot [em].
struct Reach {
    double above = 0.0;
    double below = 0.0;
};

Reach reach_of(FT_Face face, char character) {
    REQUIRE(FT_Load_Char(face, static_cast<FT_ULong>(character), FT_LOAD_NO_SCALE) == 0);
    const auto& box = face->glyph->metrics;
    const double em = face->units_per_EM;
    return {static_cast<double>(box.horiBearingY) / em, static_cast<double>(box.height - box.horiBearingY) / em};
}

Reach farthest(FT_Face face, std::string_view characters) {
    Reach most;
    for (const char one : characters) {
        const Reach reach = reach_of(face, one);
        most.above = std::max(most.above, reach.above);
        most.below = std::max(most.below, reach.below);
    }
    return most;
}

/// Width of the first stem of the capital H at a quarter of its height [thousandths of an em].
double stem_of(FT_Face face) {
    REQUIRE(FT_Load_Char(face, 'H', FT_LOAD_NO_SCALE) == 0);
    const FT_Outline& outline = face->glyph->outline;
    const double level = 0.25 * static_cast<double>(face->glyph->metrics.horiBearingY);
    std::vector<double> crossings;
    for (int contour = 0, first = 0; contour < outline.n_contours; ++contour) {
        const int last = outline.contours[contour];
        for (int i = first; i <= last; ++i) {
            const FT_Vector& a = outline.points[i];
            const FT_Vector& b = outline.points[i == last ? first : i + 1];
            const auto ay = static_cast<double>(a.y);
            const auto by = static_cast<double>(b.y);
            if ((ay < level) != (by < level)) {
                const double share = (level - ay) / (by - ay);
                crossings.push_back(static_cast<double>(a.x) + share * static_cast<double>(b.x - a.x));
            }
        }
        first = last + 1;
    }
    REQUIRE(crossings.size() >= 2);
    std::sort(crossings.begin(), crossings.end());
    return (crossings[1] - crossings[0]) / face->units_per_EM * 1000.0;
}

}  // namespace

TEST_CASE("what fonts/CMakeLists.txt says of the typeface is so: heights and stems, measured on the outlines") {
    const auto fonts = draw::open_fonts(support::fonts());
    REQUIRE(fonts.ok());
    for (const Weight weight : {Weight::regular, Weight::bold}) {
        FT_Face face = (*fonts)->face(weight);
        const bool bold = weight == Weight::bold;
        CAPTURE(bold);
        // Legibility is judged by a capital no taller than the flattest.
        CHECK(near_abs(typeface::cap_em, reach_of(face, 'E').above, 0.005));
        CHECK(typeface::ascent_em >= farthest(face, "ABCDEFGHIJKLMNOPRSTUVWXYZ0123456789").above);
        CHECK(typeface::ascent_em <= farthest(face, "bdfhkl").above);
        const Reach letters = farthest(face, "bdfhklgjpqy()");
        CHECK(near_abs(typeface::descent_em, letters.below, 0.06));
        CHECK(typeface::leading_em > letters.above + letters.below);  // lines do not touch
        CHECK(near_abs(bold ? typeface::stem_bold : typeface::stem_regular, stem_of(face), 1.5));
    }
}

TEST_CASE("advances: B612 has figures of 0.65 em and a space of 0.35 em, in both faces alike") {
    // print.md 7.1, measured on the font files: digits 1300, space 700 of 2000 units.
    constexpr layout::Millimetres em10{10.0 * 25.4 / 72.0};
    for (const Weight face : {Weight::regular, Weight::bold}) {
        for (const char* digit : {"0", "1", "5", "9"}) {
            CHECK(near_abs(real_measure().width(digit, face, 10.0_pt), 0.65 * em10, 1e-9));
        }
        CHECK(near_abs(real_measure().width(" ", face, 10.0_pt), 0.35 * em10, 1e-9));
        CHECK(near_abs(real_measure().width("\u00A0", face, 10.0_pt), 0.35 * em10, 1e-9));
        CHECK(real_measure().width("", face, 10.0_pt) == 0.0_mm);
        // No kerning: a text is as wide as its letters.
        const layout::Millimetres whole = real_measure().width("AVATAR", face, 12.0_pt);
        layout::Millimetres sum;
        for (const char* letter : {"A", "V", "A", "T", "A", "R"}) {
            sum += real_measure().width(letter, face, 12.0_pt);
        }
        CHECK(near_abs(whole, sum, 1e-9));
        CHECK(near_abs(real_measure().width("AVATAR", face, 24.0_pt), 2.0 * whole, 1e-9));
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
    CHECK_FALSE(draw::to_png(layout::Page{10.0_mm, 10.0_mm, "", {}}, files, 72.0).ok());
    CHECK_FALSE(draw::to_pdf({layout::Page{100.0_mm, 100.0_mm, "", {}}}, files, {}).ok());
}

TEST_CASE("making the faces again gives the same bytes, and their licence lies beside them") {
    const support::Scratch scratch("faces");
    const std::string script = std::string(HOLDWATER_SOURCE_DIR) + "/fonts/make_truetype.py";
    const auto ran = support::run("/usr/bin/python3 -I " + script + " " + typeface::source_folder + "/" +
                                  typeface::bold + ".otf " + scratch.path("b.ttf"));
    REQUIRE(ran.status == 0);
    const std::string again = support::file_text(scratch.path("b.ttf"));
    CHECK(again.size() > 50000);
    CHECK(again == support::file_text(support::fonts().bold));
    const std::string licence = support::file_text(std::string(HOLDWATER_FONT_DIR) + "/LICENCE.txt");
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
