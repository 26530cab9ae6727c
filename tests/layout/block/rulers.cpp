// SPDX-License-Identifier: MIT
// The ruler is a measuring instrument: true to scale, labels apart, an honest end. And the label spreading behind it.
#include "layout/block/blocks.hpp"
#include "layout/block/spread.hpp"
#include "layout/check/geometry.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;
using support::phrases;

namespace {

card::Ruler ruler_with(double step, int count, double too_thick) {
    card::Ruler made;
    made.title = "pork loin, round";
    made.zero_label = "line up here";
    for (int i = 1; i <= count; ++i) {
        made.ticks.push_back({step * i, std::to_string(i) + "\u00A0h\u00A015", i == 2});
    }
    made.too_thick_mm = too_thick;
    made.too_thick_label = "too thick: split it";
    return made;
}

/// Labels with one leader each.
std::vector<FlagWish> wishes(const std::vector<Millimetres>& at, Millimetres width) {
    std::vector<FlagWish> made;
    for (const Millimetres one : at) {
        made.push_back({one, one, width});
    }
    return made;
}

/// Places of the tick lines along the ruler, ascending: the first is the zero line.
std::vector<Millimetres> ticks_along(const RulerStrip& strip, bool upright, Millimetres cut) {
    std::vector<Millimetres> found;
    for (const auto& item : strip.items) {
        if (const auto* rule = std::get_if<PlacedLine>(&item)) {
            const Millimetres start = upright ? rule->x1 : rule->y1;
            if (rule->role == Role::ruler_tick && support::near_abs(start, cut, 1e-9)) {
                CHECK(support::near_abs(upright ? rule->y1 : rule->x1, upright ? rule->y2 : rule->x2, 1e-12));
                found.push_back(upright ? rule->y1 : rule->x1);
            }
        }
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace

TEST_CASE("every tick stands at its distance from the zero line to 0.001 mm") {
    for (const char* name : {"hand", "pocket", "large"}) {
        const Format format = support::format(name);
        const bool upright = format.height > format.width;
        const BlockContext setting{format, measure, phrases, 80.0_mm, 0.0};
        const card::Ruler block = ruler_with(15.25, 4, 61.5);
        const RulerStrip strip = ruler(block, setting);
        CHECK(strip.cut_off_mm == 0.0_mm);
        CHECK(strip.too_tight == 0.0_mm);
        const auto at = ticks_along(strip, upright, upright ? 0.0_mm : format.height);
        REQUIRE(at.size() == block.ticks.size() + 1);
        for (std::size_t i = 0; i < block.ticks.size(); ++i) {
            CHECK(support::near_abs(at[i + 1] - at[0], Millimetres{block.ticks[i].at_mm}, 0.001));
        }
        // The bar starts exactly where the piece is too thick.
        bool bar_found = false;
        for (const auto& item : strip.items) {
            if (const auto* box = std::get_if<PlacedBox>(&item); box != nullptr && box->role == Role::ruler_tick) {
                CHECK(support::near_abs((upright ? box->y : box->x) - at[0], 61.5_mm, 0.001));
                bar_found = true;
            }
        }
        CHECK(bar_found);
    }
}

TEST_CASE("a hand card holds a ruler of 95 mm whole, a pocket card ends it openly at its last tick") {
    const Format hand = support::format("hand");
    CHECK(ruler(ruler_with(9.5, 10, 95.0), {hand, measure, phrases, 80.0_mm, 0.0}).cut_off_mm == 0.0_mm);

    const Format pocket = support::format("pocket");
    const RulerStrip strip = ruler(ruler_with(9.5, 10, 95.0), {pocket, measure, phrases, 80.0_mm, 0.0});
    CHECK(strip.cut_off_mm > 50.0_mm);
    CHECK(support::near_abs(std::remainder(strip.cut_off_mm.value(), 9.5), 0.0, 1e-9));
    Page page;
    page.items = strip.items;
    CHECK(support::all_text(page).find("longer:usethetable") != std::string::npos);
    CHECK(support::all_text(page).find("toothick") == std::string::npos);
    CHECK(support::all_text(page).find("10h15") == std::string::npos);
}

TEST_CASE("labels of close ticks do not touch") {
    const Format hand = support::format("hand");
    const BlockContext setting{hand, measure, phrases, 80.0_mm, 0.0};
    const RulerStrip close = ruler(ruler_with(2.0, 12, 80.0), setting);
    CHECK(close.too_tight == 0.0_mm);
    std::vector<Rect> inks;
    for (const auto& item : close.items) {
        if (const auto* text = std::get_if<PlacedText>(&item)) {
            for (const auto& other : inks) {
                CHECK_FALSE(extent(*text).grown(-1e-6_mm).overlaps(other));
            }
            inks.push_back(extent(*text).grown(-1e-6_mm));
        }
    }
    CHECK(inks.size() > 12);
}

TEST_CASE("where not every label finds room, every second or third stands, the thickest and the trip's own always") {
    for (const char* name : {"hand", "large"}) {
        const Format format = support::format(name);
        const BlockContext setting{format, measure, phrases, 80.0_mm, 0.0};
        card::Ruler block = ruler_with(1.0, 60, 70.0);
        for (std::size_t i = 0; i < block.ticks.size(); ++i) {
            block.ticks[i].label = "no" + std::to_string(i + 1);
        }
        const RulerStrip strip = ruler(block, setting);
        CHECK(strip.too_tight == 0.0_mm);
        CHECK(ticks_along(strip, format.height > format.width, format.height > format.width ? 0.0_mm : format.height)
                  .size() == block.ticks.size() + 1);
        Page page;
        page.items = strip.items;
        std::vector<int> labelled;
        for (int i = 1; i <= 60; ++i) {
            for (const auto& text : support::texts(page)) {
                if (text.text == "no" + std::to_string(i)) {
                    labelled.push_back(i);
                }
            }
        }
        REQUIRE(labelled.size() > 3);
        CHECK(labelled.size() < 30);
        CHECK(labelled.front() == 2);
        CHECK(labelled.back() == 60);
        const int step = labelled.back() - labelled[labelled.size() - 2];
        for (std::size_t i = 2; i < labelled.size(); ++i) {
            CHECK(labelled[i] - labelled[i - 1] == step);
        }
    }
}

TEST_CASE("spreading keeps order, distance and bounds, and moves nothing that has room") {
    const auto free = spread_apart({10.0_mm, 20.0_mm, 30.0_mm}, 4.0_mm, 0.0_mm, 50.0_mm);
    CHECK(free.at == std::vector{10.0_mm, 20.0_mm, 30.0_mm});
    // Two that want the same place part evenly: the least sum of squares.
    const auto pair = spread_apart({20.0_mm, 20.0_mm}, 4.0_mm, 0.0_mm, 50.0_mm);
    CHECK(support::near_abs(pair.at[0], 18.0_mm, 1e-12));
    CHECK(support::near_abs(pair.at[1], 22.0_mm, 1e-12));
    const auto crowd = spread_apart({0.0_mm, 0.5_mm, 1.0_mm, 9.5_mm, 9.8_mm, 10.0_mm}, 1.5_mm, 0.0_mm, 10.0_mm);
    CHECK(crowd.missing == 0.0_mm);
    for (std::size_t i = 0; i < crowd.at.size(); ++i) {
        CHECK(crowd.at[i] >= -1e-12_mm);
        CHECK(crowd.at[i] <= 10.0_mm + 1e-12_mm);
        CHECK((i == 0 || crowd.at[i] - crowd.at[i - 1] >= 1.5_mm - 1e-12_mm));
    }
    CHECK(support::near_abs(spread_apart({1.0_mm, 2.0_mm, 3.0_mm}, 4.0_mm, 0.0_mm, 5.0_mm).missing, 3.0_mm, 1e-12));
}

TEST_CASE("flags above a bar: rows as few as can be, no label on another, no leader through a label") {
    const std::vector<std::vector<Millimetres>> cases = {{0.0_mm, 20.0_mm, 28.0_mm, 62.0_mm, 75.0_mm, 84.0_mm},
                                                         {5.0_mm, 6.0_mm, 7.0_mm, 8.0_mm},
                                                         {0.0_mm, 40.0_mm, 84.0_mm},
                                                         {80.0_mm, 81.0_mm, 82.0_mm, 83.0_mm},
                                                         {10.0_mm, 11.0_mm, 40.0_mm, 41.0_mm, 70.0_mm, 71.0_mm}};
    for (const auto& at : cases) {
        const std::vector<Millimetres> widths(at.size(), 22.0_mm);
        const Millimetres gap = 2.0_mm;
        const auto flags = flag_rows(wishes(at, 22.0_mm), 0.0_mm, 84.0_mm, gap, 9);
        REQUIRE(flags.size() == at.size());
        for (std::size_t i = 0; i < flags.size(); ++i) {
            CHECK(flags[i].left >= 0.0_mm);
            CHECK(flags[i].left + widths[i] <= 84.0_mm + 1e-9_mm);
            CHECK(flags[i].left <= at[i] + 1e-9_mm);  // its leader meets its label
            CHECK(flags[i].left + widths[i] >= at[i] - 1e-9_mm);
            for (std::size_t k = 0; k < flags.size(); ++k) {
                if (i == k) {
                    continue;
                }
                const bool apart = flags[i].left + widths[i] + gap <= flags[k].left + 1e-9_mm ||
                                   flags[k].left + widths[k] + gap <= flags[i].left + 1e-9_mm;
                CHECK((flags[i].row != flags[k].row || apart));
                const bool under = at[i] > flags[k].left && at[i] < flags[k].left + widths[k];
                CHECK_FALSE((flags[i].row > flags[k].row && under));
            }
        }
    }
    CHECK(flag_rows(wishes({0.0_mm, 40.0_mm, 84.0_mm}, 10.0_mm), 0.0_mm, 84.0_mm, 2.0_mm, 9)[2].row == 0);
    CHECK(flag_rows(wishes({10.0_mm, 10.1_mm, 10.2_mm}, 30.0_mm), 0.0_mm, 84.0_mm, 2.0_mm, 1).empty());
    // No leader passes a label that stands less than half a gap beside it, however many rows there are.
    CHECK(flag_rows(wishes({10.0_mm, 10.1_mm}, 30.0_mm), 0.0_mm, 84.0_mm, 2.0_mm, 9).empty());
    // A label with two leaders covers both of them.
    const auto shared =
        flag_rows({{10.0_mm, 14.0_mm, 30.0_mm}, {60.0_mm, 60.0_mm, 20.0_mm}}, 0.0_mm, 84.0_mm, 2.0_mm, 9);
    REQUIRE(shared.size() == 2);
    CHECK(shared[0].left <= 10.0_mm);
    CHECK(shared[0].left + 30.0_mm >= 14.0_mm);
    CHECK(flag_rows({{10.0_mm, 50.0_mm, 30.0_mm}}, 0.0_mm, 84.0_mm, 2.0_mm, 9).empty());
}
