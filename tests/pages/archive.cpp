// SPDX-License-Identifier: MIT
// The demo decks as files for keeping, a face a page.
#include "pages/demo_faces.hpp"
#include "support/pdf_checks.hpp"

#include <doctest/doctest.h>

#include <set>
#include <string>

using namespace holdwater;

TEST_CASE("every demo deck is a valid PDF/A-1b file, small, the same each time, and read out face by face") {
    const support::Scratch scratch("demo-archive");
    for (const std::string& name : support::demo_names()) {
        CAPTURE(name);
        const auto& faces = support::demo_faces(name);
        const auto made = draw::to_pdf(faces, support::fonts(), {name, "en", "Holdwater test", {}});
        REQUIRE(made.ok());
        CHECK(made.problems().empty());
        CHECK(made->size() < 120000);
        CHECK(*made == *draw::to_pdf(faces, support::fonts(), {name, "en", "Holdwater test", {}}));
        scratch.write(name + ".pdf", *made);
    }
    const std::set<std::string> archival = support::archival_files(scratch.path(""));
    for (const std::string& name : support::demo_names()) {
        CAPTURE(name);
        const auto& faces = support::demo_faces(name);
        const std::string file = scratch.path(name + ".pdf");
        CHECK(support::complaints(file) == "");
        CHECK(archival.contains(name + ".pdf"));
        // A part a face, each opened by the card's name and question.
        const std::string read = support::read_out(file);
        std::size_t at = 0;
        for (const auto& face : faces) {
            CAPTURE(face.name);
            for (const char* next : {"Sect", "H1 (block)", "H2 (block)", "\""}) {
                at = read.find(next, at);
                REQUIRE_MESSAGE(at != std::string::npos, next);
                ++at;
            }
        }
        CHECK(read.find("Sect", at) == std::string::npos);
        CHECK(read.find("WARNING") != std::string::npos);
    }
}
