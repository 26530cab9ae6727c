// SPDX-License-Identifier: MIT
// Line breaking and emphasis, with a typeface of which every character is half an em wide: 10 pt -> 1.7639 mm.
#include "layout/text/text.hpp"

#include "layout/style.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"

#include <doctest/doctest.h>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;

namespace {

constexpr Millimetres character = 0.5 * units::in_millimetres(10.0_pt);

std::vector<std::string> lines_of(std::string_view text, double characters, TextStyle style = {}) {
    std::vector<std::string> made;
    for (const auto& one : break_lines(text, style, characters * character, measure)) {
        std::string all;
        for (const auto& run : one.runs) {
            all += run.text;
        }
        made.push_back(all);
    }
    return made;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a text that fits stands on one line, to the last character") {
    CHECK(lines_of("stir and read", 13) == Lines{"stir and read"});
    CHECK(lines_of("stir and read", 12).size() == 2);
    CHECK(lines_of("", 12).empty());
    CHECK(lines_of("   ", 12).empty());
}

TEST_CASE("no line is wider than its column, and no fewer lines would do") {
    const std::string text =
        "Pour the cold litres in, then the boiling, lid shut between pots; stir to the floor and wait";
    for (int width = 9; width <= 95; ++width) {
        const auto lines = lines_of(text, width);
        std::string again;
        for (const auto& one : lines) {
            CHECK(one.size() <= static_cast<std::size_t>(width));
            again += (again.empty() ? "" : " ") + one;
        }
        CHECK(again == text);
        // Filling each line as far as it goes gives the least number there can be.
        std::size_t greedy = 1;
        std::size_t used = 0;
        for (std::size_t at = 0; at < text.size();) {
            const std::size_t end = std::min(text.find(' ', at), text.size());
            const std::size_t word = end - at;
            if (used > 0 && used + 1 + word > static_cast<std::size_t>(width)) {
                ++greedy;
                used = word;
            } else {
                used += word + (used > 0 ? 1 : 0);
            }
            at = end + 1;
        }
        CHECK(lines.size() == greedy);
    }
}

TEST_CASE("a no-break space holds, a number and its unit stay together") {
    CHECK(lines_of("read 71\u00A0°C now", 9) == Lines{"read", "71\u00A0°C now"});
    CHECK(lines_of("wait for 20 min then", 11) == Lines{"wait for", "20\u00A0min then"});
    CHECK(join_units("2.5 L of it") == "2.5\u00A0L of it");
    CHECK(join_units("at 57 °C: go") == "at 57\u00A0°C: go");
    CHECK(join_units("5 in the box") == "5 in the box");
    CHECK(join_units("3 hands") == "3 hands");
    CHECK(join_units("add 4 Lily") == "add 4 Lily");
}

TEST_CASE("no single word on the last line where another break gives as few lines") {
    // Filled greedily, "read" would stand alone.
    CHECK(lines_of("stir to the floor, then read", 24) == Lines{"stir to the floor,", "then read"});
    // Two words in two lines cannot be helped.
    CHECK(lines_of("thermometer needed", 12) == Lines{"thermometer", "needed"});
}

TEST_CASE("a word breaks after its hyphen and nowhere else") {
    CHECK(lines_of("trail-crew", 6) == Lines{"trail-", "crew"});
    CHECK(lines_of("thermometers", 5) == Lines{"thermometers"});
    CHECK(lines_of("top-up", 4) == Lines{"top-up"});
    CHECK(lines_of("at -10", 4) == Lines{"at", "-10"});
    const Fragment wide = paragraph("thermometers", {}, 5 * character, measure);
    CHECK(support::near_abs(wide.too_wide, 7 * character, 1e-9));
    CHECK(paragraph("stir", {}, 5 * character, measure).too_wide == 0.0_mm);
}

TEST_CASE("stars make bold, a lone star is a star") {
    TextStyle style;
    auto runs = styled("keep *well apart* please", style, measure);
    REQUIRE(runs.size() == 3);
    CHECK(runs[0].face == Weight::regular);
    CHECK(runs[1].text == "well apart");
    CHECK(runs[1].face == Weight::bold);
    CHECK(runs[2].text == " please");
    runs = styled("2 * 3", style, measure);
    REQUIRE(runs.size() == 1);
    CHECK(runs[0].text == "2 * 3");
}

TEST_CASE("units are quieter than their number in bold, but one emphasis stays whole") {
    TextStyle style;
    style.unit_pt = 8.0_pt;
    auto runs = styled("read *71\u00A0°C* now", style, measure);
    REQUIRE(runs.size() == 4);
    CHECK(runs[1].text == "71");
    CHECK(runs[1].face == Weight::bold);
    CHECK(runs[2].text == "\u00A0°C");
    CHECK(runs[2].face == Weight::regular);
    CHECK(runs[2].size_pt == 8.0_pt);
    style.face = Weight::bold;
    runs = styled("2\u00A0h\u00A015", style, measure);
    REQUIRE(runs.size() == 3);
    CHECK(runs[0].text == "2");
    CHECK(runs[1].text == "\u00A0h\u00A0");
    CHECK(runs[1].size_pt == 8.0_pt);
    CHECK(runs[2].text == "15");
    CHECK(styled("over 4\u00A0h", style, measure).size() == 1);
    // The same in other units stands beside it, quieter but not smaller.
    runs = styled("71\u00A0°C (160\u00A0°F)", style, measure);
    REQUIRE(runs.size() == 4);
    CHECK(runs[1].text == "\u00A0°C");
    CHECK(runs[3].text == "(160\u00A0°F)");
    CHECK(runs[3].face == Weight::regular);
    CHECK(runs[3].size_pt == style.size_pt);
    style.quiet_units = false;
    CHECK(styled("2\u00A0h\u00A015", style, measure).size() == 1);
}

TEST_CASE("on the page the no-break space is a plain one, and widths are those measured") {
    std::vector<Item> items;
    TextStyle style;
    style.unit_pt = 8.0_pt;
    place(items, one_line("*71\u00A0°C* now", style, measure), 3.0_mm, 9.0_mm, style);
    REQUIRE(items.size() == 3);
    Millimetres x = 3.0_mm;
    for (const auto& item : items) {
        const auto& text = std::get<PlacedText>(item);
        CHECK(support::near_abs(text.x, x, 1e-12));
        CHECK(text.baseline == 9.0_mm);
        CHECK(text.text.find("\u00A0") == std::string::npos);
        CHECK(support::near_abs(text.width, measure.width(text.text, text.face, text.size_pt), 1e-12));
        x += text.width;
    }
}
