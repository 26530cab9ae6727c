// SPDX-License-Identifier: MIT
// Blocks one by one: figures in line, the ladder's floor, rows to write in, the sign of a warning.
#include "layout/block/blocks.hpp"

#include "layout/check/geometry.hpp"
#include "layout/text/figures.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;
using support::near_abs;
using support::phrases;

namespace {

const Format usual;

BlockContext setting(Millimetres width = 84.0_mm, double ease = 0.0) {
    return {usual, measure, phrases, width, ease};
}

std::vector<PlacedText> texts(const Fragment& fragment) {
    Page page;
    page.items = fragment.items;
    return support::texts(page);
}

PlacedText find(const Fragment& fragment, const std::string& text) {
    for (const auto& one : texts(fragment)) {
        if (one.text == text) {
            return one;
        }
    }
    FAIL("no text " << text);
    return {};
}

Millimetres right(const PlacedText& text) {
    return text.x + text.width;
}

}  // namespace

TEST_CASE("a column of figures: whole numbers end in one line, decimals and units begin in one line") {
    card::Table block;
    block.columns = {{"reads", card::Align::right, false}, {"add", card::Align::right, true}};
    block.rows = {{"9 °C", "2.5 L"}, {"64 °C", "10 L"}, {"−10 °C", "0.75 L"}, {"57 °C", "nothing"}};
    const Fragment made = table(block, setting());
    CHECK(made.too_wide == 0.0_mm);
    CHECK(near_abs(right(find(made, "2")), right(find(made, "10")), 1e-9));
    CHECK(near_abs(right(find(made, "2")), right(find(made, "0")), 1e-9));
    CHECK(near_abs(find(made, ".5").x, find(made, ".75").x, 1e-9));
    CHECK(near_abs(right(find(made, "9")), right(find(made, "−10")), 1e-9));
    std::vector<Millimetres> litres;
    for (const auto& one : texts(made)) {
        if (one.text == " L") {
            litres.push_back(one.x);
            CHECK(one.face == Weight::regular);
            CHECK(one.size_pt < find(made, "10").size_pt);
        }
    }
    REQUIRE(litres.size() == 3);
    CHECK(near_abs(litres[0], litres[1], 1e-9));
    CHECK(near_abs(litres[0], litres[2], 1e-9));
    CHECK(find(made, "10").face == Weight::bold);
    CHECK(find(made, "64").face == Weight::regular);
}

TEST_CASE("the row of this trip has a heavy frame all round it") {
    card::Table block;
    block.columns = {{"thick", card::Align::right, false}, {"hold", card::Align::right, true}};
    block.rows = {{"70 mm", "5 h"}, {"85 mm", "7 h"}, {"90 mm", "8 h"}};
    const auto heavy = [](const Fragment& made) {
        std::vector<PlacedBox> found;
        for (const auto& item : made.items) {
            if (const auto* box = std::get_if<PlacedBox>(&item); box != nullptr && box->stroke_pt > heavy_pt) {
                found.push_back(*box);
            }
        }
        return found;
    };
    CHECK(heavy(table(block, setting())).empty());
    block.marked_row = 1;
    const Fragment made = table(block, setting());
    const auto boxes = heavy(made);
    REQUIRE(boxes.size() == 1);
    const Rect around = extent(boxes[0]);
    CHECK(around.holds(extent(find(made, "85"))));
    CHECK_FALSE(around.overlaps(extent(find(made, "70"))));
    CHECK_FALSE(around.overlaps(extent(find(made, "90"))));
    CHECK(around.x1 >= -1e-9_mm);
    CHECK(around.x2 <= 84.0_mm + 1e-9_mm);
}

TEST_CASE("a table of words and figures shares its width; one that cannot says by how much") {
    card::Table block;
    block.columns = {{"so far", card::Align::right, true}, {"do", card::Align::left, false}};
    block.rows = {
        {"2 h", "bring the core to 74 °C over the fire, or the bath back above the floor at once and eat next"}};
    const Fragment made = table(block, setting());
    CHECK(made.too_wide == 0.0_mm);
    for (const auto& one : texts(made)) {
        CHECK(right(one) <= 84.0_mm + 1e-6_mm);
        CHECK(one.x >= -1e-6_mm);
    }
    block.rows[0][1] = "incompressibilities";
    CHECK(table(block, setting(30.0_mm)).too_wide > 10.0_mm);
}

TEST_CASE("the ladder reads from the top down and ends in a solid bar with its action in white bold") {
    card::Ladder block;
    block.left_head = "reads";
    block.right_heads = {"add", "swap"};
    block.rungs = {{"64 °C", {"2 L", "2.5 L"}}, {"60 °C", {"4 L", "5 L"}}};
    block.floor_reading = "below 57 °C";
    block.floor_action = "go to Limits";
    const Fragment made = ladder(block, setting());
    CHECK(made.too_wide == 0.0_mm);
    CHECK(find(made, "64").baseline < find(made, "60").baseline);
    const auto action = find(made, "go to Limits");
    CHECK(action.grey == 1.0);
    CHECK(action.face == Weight::bold);
    CHECK(action.baseline > find(made, "60").baseline);
    const bool on_black = std::any_of(made.items.begin(), made.items.end(), [&](const Item& item) {
        const auto* box = std::get_if<PlacedBox>(&item);
        return box != nullptr && box->filled && box->fill_grey == 0.0 && extent(*box).holds(extent(action)) &&
               near_abs(box->width, 84.0_mm, 1e-9);
    });
    CHECK(on_black);
}

TEST_CASE("rows to write in are at least 7 mm high at any ease") {
    const card::WriteIn block{{"plan", "clock", "bath °C"}, {"20:40", "", "22:30"}};
    for (const double ease : {0.0, 0.4, 1.0}) {
        const Fragment made = write_in(block, setting(84.0_mm, ease));
        std::vector<Millimetres> levels;
        for (const auto& item : made.items) {
            if (const auto* rule = std::get_if<PlacedLine>(&item); rule != nullptr && rule->y1 == rule->y2) {
                levels.push_back(rule->y1);
            }
        }
        REQUIRE(levels.size() == 3);
        CHECK(levels[1] - levels[0] >= 7.0_mm - 1e-9_mm);
        CHECK(levels[2] - levels[1] >= 7.0_mm - 1e-9_mm);
    }
}

TEST_CASE("warnings share one bar, cautions have a frame, a plain word neither") {
    using card::SignalWord;
    const Fragment two = cautions({{SignalWord::warning, "scalds"}, {SignalWord::warning, "burns"}}, setting());
    int words = 0;
    for (const auto& one : texts(two)) {
        words += one.text == "WARNING" ? 1 : 0;
        CHECK(one.role == Role::caution);
    }
    CHECK(words == 1);
    CHECK(find(two, "WARNING").grey == 1.0);
    const Fragment framed = cautions({{SignalWord::caution, "stir"}}, setting());
    CHECK(find(framed, "CAUTION").grey == 0.0);
    CHECK(std::any_of(framed.items.begin(), framed.items.end(), [](const Item& item) {
        const auto* box = std::get_if<PlacedBox>(&item);
        return box != nullptr && box->stroke_pt >= heavy_pt;
    }));
    const Fragment plain = cautions({{SignalWord::none, "go to Limits"}}, setting());
    CHECK(plain.items.size() == 1);
    CHECK(find(plain, "go to Limits").face == Weight::bold);
}

TEST_CASE("on a small card a warning has its tag in its first line, and is lower for it") {
    Format small = usual;
    small.compact = true;
    const card::Caution warning{card::SignalWord::warning,
                                "Never pour boiling water on a bag; scald: cool water, 20 min."};
    const BlockContext tight{small, measure, phrases, 84.0_mm, 0.0};
    const Fragment made = cautions({warning}, tight);
    CHECK(made.too_wide == 0.0_mm);
    CHECK(made.height < cautions({warning}, setting()).height);
    const auto tag = find(made, "WARNING");
    CHECK(tag.grey == 1.0);
    const auto all = texts(made);
    REQUIRE(all.size() >= 3);
    CHECK(all[1].baseline == tag.baseline);
    CHECK(all[1].x > right(tag));
    CHECK(all[2].x < all[1].x);
}

TEST_CASE("the key number grows with the room of its face and never falls below its size") {
    const card::KeyNumber block{"Fill to", "71", "°C", "160 °F, stirred"};
    Points before;
    for (const double ease : {0.0, 0.3, 0.6, 1.0}) {
        const Fragment made = key_number(block, setting(84.0_mm, ease));
        const auto value = find(made, "71");
        CHECK(value.size_pt >= usual.key_pt);
        CHECK(value.size_pt <= usual.key_max_pt);
        CHECK(value.size_pt >= before);
        CHECK(find(made, "°C").size_pt < value.size_pt);
        CHECK(find(made, "°C").face == Weight::regular);
        CHECK(find(made, "160").size_pt < value.size_pt);
        before = value.size_pt;
    }
    CHECK(before == usual.key_max_pt);
    CHECK(key_number({"", "123456789012345678", "", ""}, setting(40.0_mm)).too_wide > 0.0_mm);
}

TEST_CASE("key numbers in a row share one size and one baseline") {
    card::KeyRow block;
    block.numbers = {{"Cold water first", "12", "L", ""}, {"Then", "24", "L", "3 pots"}, {"At", "20:40", "", ""}};
    const Fragment made = key_row(block, setting());
    CHECK(made.too_wide == 0.0_mm);
    CHECK(find(made, "12").baseline == find(made, "24").baseline);
    CHECK(find(made, "12").size_pt == find(made, "20:40").size_pt);
    CHECK(right(find(made, "12")) < find(made, "24").x);
}

TEST_CASE("steps count on from the number that they are given, and their words line up") {
    card::Steps block{{{"", "Stir"}, {"", "Read"}, {"", "Lower the bags"}}, true};
    const Fragment made = steps(block, setting(), 9);
    CHECK(near_abs(right(find(made, "9")), right(find(made, "10")), 1e-9));
    CHECK(find(made, "Stir").x == find(made, "Read").x);
    CHECK(find(made, "11").baseline == find(made, "Lower the bags").baseline);
    const Fragment clocks = steps({{{"16:00", "Light the fire"}, {"9:30", "Eat"}}, false}, setting());
    CHECK(near_abs(right(find(clocks, "16:00")), right(find(clocks, "9:30")), 1e-9));
}
