// SPDX-License-Identifier: MIT
// Every one of these decks finds room in the working formats and on both sheets.
#include "cards/texts.hpp"
#include "draw/draw.hpp"
#include "layout/layout.hpp"
#include "support/trips.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace holdwater;
using namespace holdwater::support;

TEST_CASE("every deck is laid out in hand, pocket and large") {
    const std::string layouts = std::string(HOLDWATER_SOURCE_DIR) + "/layouts";
    const std::string fonts = std::string(HOLDWATER_BINARY_DIR) + "/fonts/made/";
    const auto measure = draw::open_measure({fonts + "B612-Regular.ttf", fonts + "B612-Bold.ttf"});
    REQUIRE(measure.ok());
    for (const std::string& path : trip_paths()) {
        CAPTURE(path);
        const Dealt dealt(path);
        for (const char* name : {"hand", "pocket", "large"}) {
            CAPTURE(name);
            const auto format = layout::read_format(file_text(layouts + "/formats/" + name + ".toml"), "format");
            REQUIRE(format.ok());
            const auto faces = layout::lay_out(dealt.deck, *format, **measure);
            REQUIRE(faces.ok());
            for (const char* paper : {"a4", "letter"}) {
                CAPTURE(paper);
                const auto sheet = layout::read_sheet(file_text(layouts + "/sheets/" + paper + ".toml"), "sheet");
                REQUIRE(sheet.ok());
                CHECK(layout::impose(*faces, *format, *sheet, layout::Sides::duplex, 1, "trip", **measure).ok());
            }
        }
    }
}
