// SPDX-License-Identifier: MIT
// The printed card is the previewed card: every face of one demo deck, and every third of the others (a face takes more
// than a second).
#include "support/pictures.hpp"

#include "pages/demo_faces.hpp"

#include <doctest/doctest.h>

using namespace holdwater;

TEST_CASE("each face of the trail crew's deck, first half: picture and PDF agree") {
    const auto& faces = support::demo_faces("trail-crew");
    REQUIRE(faces.size() > 8);
    for (std::size_t i = 0; i < faces.size() / 2; ++i) {
        support::check_same_picture(faces[i]);
    }
}

TEST_CASE("each face of the trail crew's deck, second half: picture and PDF agree") {
    const auto& faces = support::demo_faces("trail-crew");
    for (std::size_t i = faces.size() / 2; i < faces.size(); ++i) {
        support::check_same_picture(faces[i]);
    }
}

TEST_CASE("every third face of the other demo decks: picture and PDF agree") {
    for (const char* name : {"paddling-day", "class-day"}) {
        CAPTURE(name);
        const auto& faces = support::demo_faces(name);
        for (std::size_t i = 1; i < faces.size(); i += 3) {
            support::check_same_picture(faces[i]);
        }
    }
}
