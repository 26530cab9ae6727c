// SPDX-License-Identifier: MIT
// The day bar never fails: marks too close for a flag each share one, and where that does not do, labels go.
#include "layout/block/day_flags.hpp"

#include "layout/block/blocks.hpp"
#include "layout/check/geometry.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace holdwater;
using namespace holdwater::layout;

namespace {

const support::FakeMeasure measure;
const Phrases phrases;

card::DayBar bar_with(const std::vector<card::DayBar::Mark>& marks) {
    card::DayBar made;
    made.from = 16.0;
    made.to = 36.5;
    made.spans = {{card::DayBar::Kind::fill, 16.0, 20.0, "fill"}, {card::DayBar::Kind::cook, 20.0, 36.5, "cook"}};
    made.marks = marks;
    return made;
}

Page drawn(const card::DayBar& bar, const Format& format) {
    const Fragment part = day_bar(bar, {format, measure, phrases, format.width - 2.0 * format.margin, 0.3});
    CHECK(part.too_wide == 0.0_mm);
    Page page;
    page.items = part.items;
    return page;
}

bool is_leader(const PlacedLine& rule) {
    return rule.x1 == rule.x2 && rule.width_pt == rule_pt;  // the hatching of the bar is finer
}

/// No text on another, none crossed by a leader.
void check_clean(const Page& page) {
    const auto all = support::texts(page);
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (std::size_t k = i + 1; k < all.size(); ++k) {
            CHECK_FALSE(extent(all[i]).grown(-1e-4_mm).overlaps(extent(all[k]).grown(-1e-4_mm)));
        }
        for (const auto& item : page.items) {
            if (const auto* rule = std::get_if<PlacedLine>(&item); rule != nullptr && is_leader(*rule)) {
                CHECK_FALSE(enters(extent(all[i]), rule->x1, rule->y1, rule->x2, rule->y2));
            }
        }
    }
}

std::size_t leaders(const Page& page) {
    std::size_t count = 0;
    for (const auto& item : page.items) {
        const auto* rule = std::get_if<PlacedLine>(&item);
        count += rule != nullptr && is_leader(*rule) ? 1 : 0;
    }
    return count;
}

}  // namespace

TEST_CASE("marks at nearly the same time share a flag, each with its own line to the bar") {
    for (const char* name : {"hand", "pocket", "large"}) {
        CAPTURE(std::string(name));
        const Page page = drawn(bar_with({{20.0, "20:00", "in"}, {36.3, "12:18", "hold"}, {36.5, "12:30", "eat"}}),
                                support::format(name));
        check_clean(page);
        const std::string all = support::all_text(page);
        for (const char* label : {"20:00", "in", "12:18", "hold", "12:30", "eat"}) {
            CHECK(all.find(label) != std::string::npos);
        }
        CHECK(leaders(page) == 3);
    }
}

TEST_CASE("a time that two marks share is said once") {
    const Page page = drawn(bar_with({{36.5, "12:30", "hold"}, {36.5, "12:30", "eat"}}), support::format("hand"));
    check_clean(page);
    const std::string all = support::all_text(page);
    CHECK(all.find("12:30") == all.rfind("12:30"));
    CHECK(all.find("hold") != std::string::npos);
    CHECK(all.find("eat") != std::string::npos);
}

TEST_CASE("with more marks than the bar has room for, labels go and their lines stay; the meal keeps its label") {
    std::vector<card::DayBar::Mark> marks{{20.0, "20:00", "in"}};
    for (int i = 0; i < 40; ++i) {
        marks.push_back({21.0 + 0.35 * i, "10:22 pm", i % 7 == 0 ? "a long word or two" : ""});
    }
    marks.push_back({36.5, "12:30", "eat"});
    for (const char* name : {"hand", "wallet"}) {
        const Page page = drawn(bar_with(marks), support::format(name));
        check_clean(page);
        CHECK(support::all_text(page).find("12:30eat") != std::string::npos);
        CHECK(leaders(page) == marks.size());
    }
}
