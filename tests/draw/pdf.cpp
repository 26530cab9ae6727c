// SPDX-License-Identifier: MIT
// The PDF as other programs see it.
#include "support/near.hpp"
#include "support/printing.hpp"
#include "typeface.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using support::run;

namespace {

std::string pdf_of(const std::vector<layout::Page>& pages, const std::vector<std::string>& labels = {}) {
    const auto made = draw::to_pdf(pages, support::fonts(), {"Larch Ridge · cards", "en", "Holdwater test", labels});
    REQUIRE_MESSAGE(made.ok(), (made.problems().empty() ? "" : problem::to_line(made.problems()[0])));
    return *made;
}

layout::Page one_text(const std::string& text) {
    layout::Page page{92.0_mm, 124.0_mm, "one", {}};
    layout::PlacedText placed;
    placed.x = 10.0_mm;
    placed.baseline = 20.0_mm;
    placed.size_pt = 10.0_pt;
    placed.text = text;
    page.items.emplace_back(placed);
    return page;
}

std::string without_spaces(const std::string& text) {
    std::string made;
    for (const char c : text) {
        if (c != ' ' && c != '\n' && c != '\f') {
            made += c;
        }
    }
    return made;
}

}  // namespace

TEST_CASE("every imposed sheet of the sample deck is sound PDF with its texts in it") {
    const support::Scratch scratch("pdf");
    for (const char* format_name : {"hand", "pocket", "large"}) {
        const auto faces = support::sample_faces(format_name);
        for (const char* sheet_name : {"a4", "letter"}) {
            const auto pages = layout::impose(faces, support::format(format_name), support::sheet(sheet_name),
                                              layout::Sides::duplex, 1, "Larch Ridge", support::real_measure());
            REQUIRE(pages.ok());
            std::vector<std::string> labels;
            for (const auto& page : *pages) {
                labels.push_back(page.name);
            }
            const std::string file = scratch.write("deck.pdf", pdf_of(*pages, labels));
            const auto check = run("qpdf --check " + file);
            CHECK_MESSAGE(check.status == 0, check.output);
            CHECK(check.output.find("WARNING") == std::string::npos);
            const auto text = run("pdftotext -raw " + file + " -");
            CHECK(text.status == 0);
            CHECK(text.output.find("Syntax") == std::string::npos);  // poppler complains of malformed maps so
            const std::string words = without_spaces(text.output);
            for (const auto* expected : {"Howhot,howmuch?", "71", "°C", "12:30", "WARNING", "Raggeddoesnotappear"}) {
                const bool there = words.find(expected) != std::string::npos;
                CHECK(there == (std::string(expected) != "Raggeddoesnotappear"));
            }
        }
    }
}

TEST_CASE("texts come out of the PDF character for character") {
    const support::Scratch scratch("text");
    const std::string hard = "71 °C ± ½ ≤ 3 × 4 − 1 – 2 · ñandú Größe → x";
    const std::string file = scratch.write("one.pdf", pdf_of({one_text(hard)}));
    CHECK(run("pdftotext " + file + " -").output.find(hard) != std::string::npos);
    CHECK(run("mutool draw -q -F txt " + file).output.find(hard) != std::string::npos);
}

TEST_CASE("page sizes, title, labels, no dates, embedded subsets, no scaling in print") {
    const support::Scratch scratch("info");
    const auto pages = layout::impose(support::sample_faces("hand"), support::format("hand"), support::sheet("a4"),
                                      layout::Sides::duplex, 1, "Larch Ridge", support::real_measure());
    REQUIRE(pages.ok());
    std::vector<std::string> labels(pages->size(), "sheet");
    labels[1] = "sheet 1 back";
    const std::string bytes = pdf_of(*pages, labels);
    const std::string file = scratch.write("deck.pdf", bytes);
    const auto info = run("pdfinfo -enc UTF-8 " + file);
    CHECK(info.output.find("Larch Ridge · cards") != std::string::npos);
    CHECK(info.output.find("595.276 x 841.89") != std::string::npos);
    CHECK(info.output.find("CreationDate") == std::string::npos);
    CHECK(bytes.find("Date") == std::string::npos);
    const auto plain = run("qpdf --qdf --object-streams=disable " + file + " - | strings");
    CHECK(plain.output.find("/PrintScaling /None") != std::string::npos);
    CHECK(plain.output.find("/Lang (en)") != std::string::npos);
    CHECK(plain.output.find("/TrimBox") != std::string::npos);
    const auto structure = run("qpdf --json --json-key=pagelabels " + file);
    CHECK(structure.output.find("sheet 1 back") != std::string::npos);
    const auto fonts = run("pdffonts " + file);
    CHECK(fonts.output.find(typeface::regular) != std::string::npos);
    CHECK(fonts.output.find(typeface::bold) != std::string::npos);
    CHECK(fonts.output.find("CID TrueType") != std::string::npos);
    CHECK(fonts.output.find(" no ") == std::string::npos);  // embedded, subset, with Unicode: all yes
    CHECK(bytes.size() < 120000);
    // Black is grey 0, and nothing is in colour.
    const auto colours = run("qpdf --qdf --object-streams=disable " + file + " - | strings | grep -cE ' (rg|RG|k|K)$'");
    CHECK(colours.output.substr(0, 1) == "0");
}

TEST_CASE("the same pages give the same bytes") {
    const auto pages = support::pages_of(support::sample_faces("hand"));
    CHECK(pdf_of(pages) == pdf_of(pages));
    const auto one = draw::to_png(pages[0], support::fonts(), 100.0);
    const auto two = draw::to_png(pages[0], support::fonts(), 100.0);
    REQUIRE(one.ok());
    CHECK(*one == *two);
}

TEST_CASE("a typeface that just fills a block of libharu's streams is written, as an archive, the same each time") {
    // Found among some thousand sets of glyphs, of the typeface of today: libharu alone gives 0x1033 for it.
    const support::Scratch scratch("full");
    const std::string text = "ceghjlmopqstvwxzABCDGHKLNPSTWX01356789";
    const auto made = draw::to_pdf({one_text(text)}, support::fonts(), {"just full", "en", "Holdwater test", {}});
    REQUIRE(made.ok());
    CHECK(made.problems().empty());  // not even as a plain one
    CHECK(pdf_of({one_text(text)}) == pdf_of({one_text(text)}));
    const std::string file = scratch.write("full.pdf", *made);
    CHECK(run("pdftotext " + file + " -").output.find(text) != std::string::npos);
    CHECK(run("qpdf --check " + file).status == 0);
}

TEST_CASE("a missing glyph is refused before anything is drawn") {
    for (const char* text : {"box \u25A0", "thin\u2009space", "broken \xE2\x98"}) {
        const auto made = draw::to_pdf({one_text("fine"), one_text(text)}, support::fonts(), {});
        CHECK_FALSE(made.ok());
        CHECK(support::has_code(made.problems(), "glyph-missing"));
    }
}

TEST_CASE("what the library cannot write is an error, never half a file") {
    CHECK(support::has_code(draw::to_pdf({}, support::fonts(), {}).problems(), "pdf-failed"));
    layout::Page page = one_text("here");
    std::get<layout::PlacedText>(page.items[0]).x = layout::Millimetres{std::numeric_limits<double>::quiet_NaN()};
    CHECK(support::has_code(draw::to_pdf({page}, support::fonts(), {}).problems(), "pdf-failed"));
    page = one_text("here");
    page.width = 0.5_mm;  // below what a PDF page may be
    const auto small = draw::to_pdf({page}, support::fonts(), {});
    CHECK_FALSE(small.ok());
    CHECK(small.problems()[0].message.find("0x1054") != std::string::npos);
    CHECK(support::has_code(draw::to_png({0.0_mm, 0.0_mm, "", {}}, support::fonts(), -1.0).problems(), "png-failed"));
    CHECK(support::has_code(draw::to_png({1e6_mm, 1e6_mm, "", {}}, support::fonts(), 300.0).problems(), "png-failed"));
}
