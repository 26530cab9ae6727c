// SPDX-License-Identifier: MIT
// The PDF for keeping, and for those who hear it: an archival file with tags, or a plain one that says so.
#include "draw/pdf_bytes.hpp"
#include "draw/tag_tree.hpp"
#include "support/pdf_checks.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using support::run;

namespace {

std::vector<layout::Page> sheets(const std::string& format, const std::string& sheet, layout::Sides sides) {
    return layout::impose(support::sample_faces(format), support::format(format), support::sheet(sheet), sides, 1,
                          "Larch Ridge", support::real_measure())
        .value();
}

draw::PdfInfo info_for(const std::vector<layout::Page>& pages, const std::string& title = "Larch & Ridge <cards> ·") {
    draw::PdfInfo info{title, "en", "Holdwater test", {}};
    for (const auto& page : pages) {
        info.page_labels.push_back(page.name);
    }
    return info;
}

std::string pdf_of(const std::vector<layout::Page>& pages) {
    const auto made = draw::to_pdf(pages, support::fonts(), info_for(pages));
    REQUIRE(made.ok());
    CHECK(made.problems().empty());
    return *made;
}

std::size_t count(const std::string& text, const std::string& part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size())) {
        ++found;
    }
    return found;
}

layout::PlacedText text_at(const std::string& words, layout::Millimetres x, layout::Millimetres baseline,
                           layout::Spot spot) {
    layout::PlacedText made;
    made.text = words;
    made.x = x;
    made.baseline = baseline;
    made.size_pt = 10.0_pt;
    made.width = support::real_measure().width(words, layout::Weight::regular, 10.0_pt);
    made.spot = spot;
    return made;
}

}  // namespace

TEST_CASE("a deck is a valid PDF/A-1b file that four programs read without complaint") {
    const support::Scratch scratch("archive");
    for (const auto& [format, sheet, sides] :
         {std::tuple{"hand", "a4", layout::Sides::duplex}, std::tuple{"pocket", "letter", layout::Sides::fold}}) {
        const std::string bytes = pdf_of(sheets(format, sheet, sides));
        CHECK(bytes.size() < 120000);
        const std::string file = scratch.write(std::string(format) + ".pdf", bytes);
        CHECK(support::complaints(file) == "");
    }
    CHECK(support::archival_files(scratch.path("")) == std::set<std::string>{"hand.pdf", "pocket.pdf"});
}

TEST_CASE("where tags cannot be had the file is plain, says so, and is no archival one") {
    const support::Scratch scratch("plain");
    const auto pages = sheets("hand", "a4", layout::Sides::duplex);
    const auto made = draw::to_pdf(pages, support::fonts(), info_for(pages, "a bell \a in the name"));
    REQUIRE(made.ok());
    REQUIRE(made.problems().size() == 1);
    CHECK(made.problems()[0].code == problem::Code("plain-pdf"));
    CHECK(made.problems()[0].severity == problem::Severity::warning);
    const std::string file = scratch.write("plain.pdf", *made);
    CHECK(run("qpdf --check " + file).status == 0);
    CHECK(support::archival_files(scratch.path("")).empty());
    CHECK(support::read_out(file).find("H1") == std::string::npos);
    CHECK(run("pdftotext -raw " + file + " -").output.find("What happens when?") != std::string::npos);
    const auto again = draw::to_pdf(pages, support::fonts(), info_for(pages, "a bell \a in the name"));
    CHECK(*again == *made);
}

TEST_CASE("every card is read out in order: name, question, blocks, cautions; tables by rows") {
    const support::Scratch scratch("order");
    const std::string read =
        support::read_out(scratch.write("deck.pdf", pdf_of(sheets("hand", "a4", layout::Sides::duplex))));
    std::size_t at = 0;
    // The Fill card and its continued face, in part.
    for (const char* words : {"H1",        "\"2 Fill",
                              "H2",        "\"How hot, how much?\"",
                              "P (block)", "\"Fill to 71 °C 160 °F stirred, before",
                              "P",         "\"Cold water first 12 L",
                              "P",         "\"WARNING 30 kg of scalding water: do not carry the box.",
                              "P",         "\"Burn:",
                              "H1",        "\"2 Fill · continued",
                              "H3",        "\"If the reading is off\"",
                              "Table",     "TR",
                              "TH",        "\"It reads\"",
                              "TH",        "\"Add boiling\"",
                              "TR",        "TD",
                              "\"65 °C\"", "TD",
                              "\"7.5 L\"", "TD",
                              "\"—\"",     "TR",
                              "TD",        "\"67 °C\""}) {
        const std::size_t found = read.find(words, at);
        CHECK_MESSAGE(found != std::string::npos, words);
        at = found == std::string::npos ? at : found + 1;
    }
    for (const char* entry : {"LI (block)", "Lbl (block)", "LBody (block)", "Figure"}) {
        CHECK_MESSAGE(read.find(entry) != std::string::npos, entry);
    }
    // The head of the sheet is furniture.
    CHECK(read.find("Print at 100") == std::string::npos);
    CHECK(run("pdftotext " + scratch.path("deck.pdf") + " -").output.find("Print at 100") != std::string::npos);
}

TEST_CASE("figures are described in words, and the outline leads to every card") {
    const support::Scratch scratch("figures");
    const std::string file = scratch.write("deck.pdf", pdf_of(sheets("hand", "a4", layout::Sides::duplex)));
    const std::string objects = run("qpdf --json " + file).output;
    CHECK(count(objects, "\"/Alt\"") == 3);  // day bar, ruler, curve
    CHECK(objects.find("40 mm: 2 h 50") != std::string::npos);
    CHECK(objects.find("95 mm: too thick: split it") != std::string::npos);
    CHECK(objects.find("20:40 food in") != std::string::npos);
    CHECK(objects.find("\"/DisplayDocTitle\": true") != std::string::npos);
    CHECK(objects.find("\"/BleedBox\"") != std::string::npos);
    const std::string outline = run("mutool show " + file + " outline").output;
    CHECK(outline.find("\"1 Plan\"\t#page=1") != std::string::npos);
    CHECK(count(outline, "#page=") == support::sample_deck().cards.size());
}

TEST_CASE("the file's name of itself comes from what is in it") {
    const auto pages = sheets("hand", "a4", layout::Sides::duplex);
    const auto id_of = [](const std::string& bytes) {
        const auto at = bytes.rfind("/ID [");
        REQUIRE(at != std::string::npos);
        return bytes.substr(at, bytes.find(']', at) - at);
    };
    const std::string one = pdf_of(pages);
    CHECK(id_of(one) == id_of(pdf_of(pages)));
    auto other = pages;
    std::get<layout::PlacedText>(other[0].items[0]).text += ".";
    CHECK(id_of(one) != id_of(pdf_of(other)));
    const std::string id = id_of(one);
    CHECK(id.substr(id.find('<'), 34) == id.substr(id.rfind('<'), 34));
}

TEST_CASE("a table keeps its columns where cells are empty, and stray items are furniture") {
    layout::Page page{92.0_mm, 124.0_mm, "one", {}};
    page.groups = {
        {layout::Tag::table, true, ""}, {layout::Tag::paragraph, false, ""}, {layout::Tag::heading, false, ""}};
    page.items = {text_at("head", 5.0_mm, 10.0_mm, {0, 0, 1}),   text_at("a", 5.0_mm, 20.0_mm, {0, 1, 0}),
                  text_at("title", 5.0_mm, 5.0_mm, {0, -1, -1}), text_at("loose", 5.0_mm, 30.0_mm, {}),
                  text_at("astray", 5.0_mm, 40.0_mm, {7, 0, 0}), text_at("well-", 5.0_mm, 50.0_mm, {1, 0, 0}),
                  text_at("done", 5.0_mm, 55.0_mm, {1, 0, 0}),   text_at("so", 40.0_mm, 55.0_mm, {1, 0, 0})};
    const auto reading = draw::reading_of({page});
    std::vector<std::string> types;
    for (const auto& element : reading.elements) {
        types.push_back(element.type);
    }
    CHECK(types == std::vector<std::string>{"Table", "Caption", "TR", "TH", "TH", "TR", "TD", "TD", "P"});
    CHECK(reading.elements[3].marks.empty());
    CHECK(reading.elements[4].marks == std::vector<int>{0});
    CHECK(reading.elements[6].marks == std::vector<int>{1});
    CHECK(reading.elements[7].parent == 5);
    CHECK(reading.pages[0].element_of == std::vector<int>{4, 6, 1, -1, -1, 8, 8, 8});
    CHECK(reading.pages[0].element_of_mark == std::vector<int>{4, 6, 1, 8});
    // No space after a hyphen at the end of a line, one across a gap.
    CHECK(reading.pages[0].space_after == std::vector<bool>{false, false, false, false, false, false, true, false});
}

TEST_CASE("the description is XML or there is none; the colour space has the size it says") {
    const auto packet = draw::xmp_packet("a < b & \"c\"", "es", "tool", "library");
    REQUIRE(packet);
    CHECK(packet->find("a &lt; b &amp; \"c\"") != std::string::npos);
    CHECK_FALSE(draw::xmp_packet("tab\t", "es", "tool", "library"));
    CHECK_FALSE(draw::xmp_packet("title", "es", "broken \xC3", "library"));
    const std::string profile = draw::srgb_profile();
    REQUIRE(profile.size() == 968);
    CHECK(profile.substr(0, 4) == std::string("\0\0\x03\xC8", 4));
    CHECK(profile.substr(36, 4) == "acsp");
    const std::string bits = draw::glyph_set(U"A");
    CHECK(bits.size() == 8192);
    CHECK(static_cast<unsigned char>(bits[0]) == 0x80);
    CHECK(static_cast<unsigned char>(bits[8]) == 0x40);
    CHECK(std::count(bits.begin(), bits.end(), '\0') == 8190);
}
