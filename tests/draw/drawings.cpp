// SPDX-License-Identifier: MIT
// A deck that shows every drawing: the same in picture and PDF, said in words, and still an archival file.
#include "layout/drawing/drawing.hpp"
#include "support/pdf_checks.hpp"
#include "support/pictures.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <string>

using namespace holdwater;

namespace {

/// Words that stand nowhere else, so that they are found in the file.
std::string words_for(const std::string& name) {
    return "Here is seen " + name;
}

/// A card a drawing, at its own size, and one with two side by side.
card::Deck drawing_deck() {
    card::Deck deck = support::sample_deck();
    deck.cards.clear();
    const auto add = [&deck](const std::string& name, card::Drawings drawings) {
        card::Card card;
        card.key = name;
        card.name = "Drawing";
        card.question = "What does a hand do?";
        card.number = static_cast<int>(deck.cards.size()) + 1;
        card.blocks.add(std::move(drawings));
        card.blocks.add(card::Note{"What stands below it keeps clear of it."});
        card.warn("Scalding water.");
        deck.cards.push_back(std::move(card));
    };
    for (const std::string& name : layout::drawing_names()) {
        add(name, {{{name, words_for(name), "Its label."}}, 0.0});
    }
    add("pair", {{{"probe-in-core", "one", "In the middle."}, {"no-wet-glove", "other", "Dry gloves only."}}, 22.0});
    return deck;
}

std::vector<layout::CardFaces> drawing_faces() {
    const auto made = layout::lay_out(drawing_deck(), support::format("hand"), support::real_measure());
    for (const auto& one : made.problems()) {
        CAPTURE(problem::to_line(one));
        CHECK(false);
    }
    return made.value();
}

}  // namespace

TEST_CASE("every drawing: cairo's picture against another program's picture of the PDF") {
    const auto faces = drawing_faces();
    REQUIRE(faces.size() == layout::drawing_names().size() + 1);
    for (const auto& card : faces) {
        CAPTURE(card.key);
        support::check_same_picture(card.faces.front());
        // The drawing is there: more ink than words and rules alone make.
        const auto picture = support::own_picture(card.faces.front(), 100, 1);
        const auto dark = std::count_if(picture.grey.begin(), picture.grey.end(), [](double g) { return g < 0.5; });
        CHECK(dark > 2000);
        // For those who want to see them, by day and in a dark camp with a red lamp: HOLDWATER_DRAWINGS=FOLDER.
        if (const char* folder = std::getenv("HOLDWATER_DRAWINGS")) {
            const draw::Light camp{true, draw::Dim{3.0, layout::Millimetres{450.0}, 0.5}};
            for (const auto& [ending, light] : {std::pair{".png", draw::Light{}}, std::pair{"-camp.png", camp}}) {
                const auto png = draw::to_png(card.faces.front(), support::fonts(), 150, light);
                REQUIRE(png.ok());
                std::ofstream(std::string(folder) + "/" + card.key + ending, std::ios::binary) << *png;
            }
        }
    }
}

TEST_CASE("drawings in a tagged PDF are figures with words, and the file stays an archival one") {
    const support::Scratch scratch("drawings");
    const auto pages = layout::impose(drawing_faces(), support::format("hand"), support::sheet("a4"),
                                      layout::Sides::duplex, 1, "Drawings", support::real_measure())
                           .value();
    draw::PdfInfo info{"Drawings", "en", "Holdwater test", {}};
    const auto made = draw::to_pdf(pages, support::fonts(), info);
    REQUIRE(made.ok());
    CHECK(made.problems().empty());
    const std::string file = scratch.write("drawings.pdf", *made);
    CHECK(support::complaints(file) == "");
    CHECK(support::archival_files(scratch.path("")) == std::set<std::string>{"drawings.pdf"});
    const std::string objects = support::run("qpdf --json " + file).output;
    for (const std::string& name : layout::drawing_names()) {
        CAPTURE(name);
        CHECK(objects.find("Its label. " + words_for(name)) != std::string::npos);
    }
    CHECK(objects.find("In the middle. one. Dry gloves only. other") != std::string::npos);
    CHECK(support::read_out(file).find("Figure") != std::string::npos);
}

TEST_CASE("without tags a drawing is still drawn") {
    layout::Page page{layout::Millimetres{60.0}, layout::Millimetres{50.0}, "plain", {}, {}};
    page.items.emplace_back(layout::drawing_named("box-in-section"));
    const auto plain = draw::to_pdf({page}, support::fonts(), {"a bell \a", "en", "test", {}});
    REQUIRE(plain.ok());
    REQUIRE(support::has_code(plain.problems(), "plain-pdf"));
    const support::Scratch scratch("plain-drawing");
    const std::string file = scratch.write("plain.pdf", *plain);
    CHECK(support::complaints(file) == "");
    const std::string out = scratch.path("page.pgm");
    REQUIRE(support::run("mutool draw -q -c gray -r 100 -o " + out + " " + file).status == 0);
    const std::string bytes = support::file_text(out);
    CHECK(std::count(bytes.begin() + 20, bytes.end(), '\0') > 1000);
}

TEST_CASE("a drawing is checked like all else on a face") {
    const auto format = support::format("hand");
    auto faces = drawing_faces();
    REQUIRE(layout::check_faces(faces, format, support::real_measure()).empty());
    const auto faults_with = [&](const auto& change) {
        auto bad = faces;
        for (auto& item : bad[0].faces[0].items) {
            if (auto* drawing = std::get_if<layout::PlacedDrawing>(&item)) {
                change(*drawing);
            }
        }
        return layout::check_faces(bad, format, support::real_measure());
    };
    CHECK(
        support::has_code(faults_with([](auto& d) { d.shapes[0].stroke_pt = layout::Points{0.3}; }), "rule-too-thin"));
    CHECK(support::has_code(faults_with([](auto& d) { d.x = layout::Millimetres{1.0}; }), "quiet-zone"));
    CHECK(support::has_code(faults_with([](auto& d) { d.x = layout::Millimetres{80.0}; }), "overflow"));
    CHECK(support::has_code(faults_with([](auto& d) { d.height += layout::Millimetres{20.0}; }), "text-crossed"));
}
