// SPDX-License-Identifier: MIT
// The curve: readings, a second line, gaps and the key that names what is drawn and nothing else.
#include "layout/block/blocks.hpp"
#include "layout/block/curve_parts.hpp"
#include "layout/check/geometry.hpp"
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

const Format hand = support::format("hand");

card::Curve plain() {
    card::Curve block;
    for (int i = 0; i <= 12; ++i) {
        const double x = 0.5 * i;
        block.likely.push_back({x, 64.0 - 1.2 * x});
        block.low.push_back({x, 64.0 - 1.5 * x});
        block.high.push_back({x, 64.0 - 1.0 * x});
    }
    block.floor = 54.4;
    block.floor_label = "54.4 °C: floor";
    for (int i = 0; i <= 6; ++i) {
        block.x_labels.push_back({1.0 * i, std::to_string(i)});
    }
    for (int y = 54; y <= 66; y += 4) {
        block.y_labels.push_back({1.0 * y, std::to_string(y)});
    }
    block.y_title = "bath, °C";
    block.x_title = "hours";
    return block;
}

card::Curve full(std::size_t readings) {
    card::Curve block = plain();
    for (std::size_t i = 0; i < readings; ++i) {
        const double x = 6.0 * static_cast<double>(i) / static_cast<double>(readings - 1);
        block.marks.push_back({x, 64.2 - 1.25 * x});
    }
    block.second = {{0.0, 60.0}, {6.0, 63.0}};
    block.gaps = {{2.0, 3.0}};
    return block;
}

Fragment made_of(const card::Curve& block, Millimetres width = 84.0_mm, double ease = 0.5) {
    return curve(block, {hand, measure, phrases, width, ease});
}

bool names(const Fragment& fragment, const std::string& text) {
    Page page;
    page.items = fragment.items;
    const auto all = support::texts(page);
    return std::any_of(all.begin(), all.end(), [&](const PlacedText& one) { return one.text == text; });
}

std::vector<PlacedPath> circles(const Fragment& fragment) {
    std::vector<PlacedPath> found;
    for (const auto& item : fragment.items) {
        const auto* path = std::get_if<PlacedPath>(&item);
        if (path != nullptr && path->closed && path->filled && path->fill_grey == 1.0) {
            found.push_back(*path);
        }
    }
    return found;
}

/// The findings on a card that holds nothing but this curve, with its caution.
problem::Problems findings(const card::Curve& block, const std::string& format) {
    card::Deck deck;
    deck.title = "a box";
    deck.stamp = "ABCD-1234";
    deck.cards.push_back(
        {"gauge", "Gauge", "How well does it hold?", 1, {block}, {{card::SignalWord::caution, "Hot."}}});
    return lay_out(deck, support::format(format), measure, phrases).problems();
}

}  // namespace

TEST_CASE("the key names what is drawn and nothing else") {
    const Fragment bare = made_of(plain());
    CHECK(names(bare, phrases.likely));
    CHECK(names(bare, phrases.range));
    for (const std::string& word : {phrases.second, phrases.reading, phrases.no_reading}) {
        CHECK_FALSE(names(bare, word));
    }
    const Fragment all = made_of(full(9));
    for (const std::string& word :
         {phrases.likely, phrases.range, phrases.second, phrases.reading, phrases.no_reading}) {
        CHECK(names(all, word));
    }
    card::Curve own = full(9);
    own.likely_label = "fit";
    own.band_label = "90 in 100";
    own.second_label = "plan";
    own.marks_label = "read";
    own.gaps_label = "gap";
    for (const char* word : {"fit", "90 in 100", "plan", "read", "gap"}) {
        CHECK(names(made_of(own), word));
    }
    CHECK_FALSE(names(made_of(own), phrases.likely));
}

TEST_CASE("a key too long for one line goes on in a second, within its width, no name on another") {
    for (const Millimetres width : {60.0_mm, 84.0_mm, 182.0_mm}) {
        const CurveKey key = curve_key(full(9), {hand, measure, phrases, width, 0.5}, width);
        CHECK(key.width <= width + 1e-9_mm);
        Page page;
        page.items = key.fragment.items;
        const auto all = support::texts(page);
        CHECK(all.size() == 5);
        for (std::size_t i = 0; i < all.size(); ++i) {
            CHECK(all[i].x + all[i].width <= width + 1e-9_mm);
            CHECK(all[i].baseline < key.fragment.height);
            for (std::size_t k = i + 1; k < all.size(); ++k) {
                CHECK_FALSE(extent(all[i]).overlaps(extent(all[k])));
            }
        }
    }
}

TEST_CASE("every reading is a circle at its place, two or five hundred") {
    for (const std::size_t readings : {2U, 9U, 60U, 500U}) {
        const card::Curve block = full(readings);
        const auto found = circles(made_of(block));
        REQUIRE(found.size() == readings + 1);  // and one in the key
        Millimetres radius;
        for (const PlacedPath& circle : found) {
            const Rect box = extent(circle);
            CHECK(near_abs(box.x2 - box.x1, box.y2 - box.y1, 1e-9));
            CHECK(box.x2 - box.x1 > 0.7_mm);
            radius = std::max(radius, 0.5 * (box.x2 - box.x1));
        }
        CHECK(radius < 1.5_mm);
        // Equal steps in time are equal steps on the card, the last at the right end.
        const auto middle = [&](std::size_t i) {
            const Rect box = extent(found[found.size() - readings + i]);
            return 0.5 * (box.x1 + box.x2);
        };
        const Millimetres step = (middle(readings - 1) - middle(0)) / static_cast<double>(readings - 1);
        for (std::size_t i = 1; i < readings; ++i) {
            CHECK(near_abs(middle(i) - middle(i - 1), step, 1e-6));
        }
    }
}

TEST_CASE("hatching stays in its gap and the scale holds every part") {
    card::Curve block = full(9);
    block.marks.push_back({7.0, 70.0});  // beyond all lines
    block.gaps.emplace_back(6.2, 6.9);
    CurveScale scale(block);
    scale.set_plot(10.0_mm, 5.0_mm, 80.0_mm, 45.0_mm);
    std::vector<Item> items;
    place_curve(items, block, scale, {hand, measure, phrases, 84.0_mm, 0.5});
    int hatches = 0;
    for (const auto& item : items) {
        const Rect box = extent(item);
        CHECK(box.x1 >= 10.0_mm - 1.5_mm);
        CHECK(box.x2 <= 80.0_mm + 1.5_mm);
        CHECK(box.y1 >= 5.0_mm - 1.5_mm);
        CHECK(box.y2 <= 45.0_mm + 1.5_mm);
        if (const auto* rule = std::get_if<PlacedLine>(&item); rule != nullptr && rule->width_pt == hair_pt) {
            ++hatches;
            const Millimetres left = std::min(rule->x1, rule->x2);
            const Millimetres right = std::max(rule->x1, rule->x2);
            const bool first = left >= scale.x(2.0) - 1e-9_mm && right <= scale.x(3.0) + 1e-9_mm;
            const bool second = left >= scale.x(6.2) - 1e-9_mm && right <= scale.x(6.9) + 1e-9_mm;
            CHECK((first || second));
        }
    }
    CHECK(hatches > 10);
}

TEST_CASE("faces with a curve and all its parts pass every check") {
    for (const std::string format : {"chart", "large", "hand", "pocket"}) {
        for (const std::size_t readings : {2U, 40U, 500U}) {
            CAPTURE(format);
            CAPTURE(readings);
            const problem::Problems found = findings(full(readings), format);
            CHECK(found.empty());
            for (const auto& one : found) {
                MESSAGE(one.message);
            }
        }
    }
    CHECK(support::format("chart").width == 190.0_mm);
}

TEST_CASE("a curve of readings alone, without a computed line, can be drawn") {
    card::Curve block = full(12);
    block.likely.clear();
    block.low.clear();
    block.high.clear();
    block.second.clear();
    CHECK(findings(block, "chart").empty());
    CHECK_FALSE(names(made_of(block), phrases.likely));
    CHECK(names(made_of(block), phrases.reading));
}
