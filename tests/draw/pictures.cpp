// SPDX-License-Identifier: MIT
// The picture of a page and its PDF are the same page; the ruler measures true on it.
#include "support/pictures.hpp"

#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::units::page_literals;
using support::near_abs;
using support::own_picture;
using support::pdf_picture;
using support::Picture;

TEST_CASE("each card of the sample deck: cairo's picture against another program's picture of the PDF") {
    std::vector<layout::Page> pages;
    for (const auto& card : support::sample_faces("hand")) {
        pages.push_back(card.faces.front());
        if (card.key == "hold") {
            pages.push_back(card.faces.back());
        }
    }
    for (const auto& page : support::pages_of(support::sample_faces("pocket"))) {
        if (page.name == "hold-3" || page.name == "night-2") {  // turned labels; a curve
            pages.push_back(page);
        }
    }
    REQUIRE(pages.size() == support::sample_deck().cards.size() + 3);
    for (const auto& page : pages) {
        support::check_same_picture(page);
    }
}

TEST_CASE("the ruler of the printed page: 60 mm between its ticks at 20 and 80 mm, within 0.1 mm") {
    const auto cards = support::sample_faces("hand");
    const auto hold = std::find_if(cards.begin(), cards.end(), [](const auto& card) { return card.key == "hold"; });
    REQUIRE(hold != cards.end());
    const layout::Page& page = hold->faces.back();

    std::vector<double> items;
    for (const auto& item : page.items) {
        const auto* rule = std::get_if<layout::PlacedLine>(&item);
        if (rule != nullptr && rule->role == layout::Role::ruler_tick && rule->x1 == 0.0_mm) {
            items.push_back(rule->y1.value());
        }
    }
    std::sort(items.begin(), items.end());
    REQUIRE(items.size() >= 17);
    const auto has = [](const std::vector<double>& ticks, double mm, double tolerance) {
        return std::any_of(ticks.begin(), ticks.end(),
                           [&](double at) { return near_abs(at - ticks[0], mm, tolerance); });
    };
    CHECK(has(items, 20.0, 0.001));
    CHECK(has(items, 80.0, 0.001));

    // The same on the rendered page: dark runs down a line 2 mm from the left cut.
    constexpr int dpi = 600;
    const Picture picture = pdf_picture(page, dpi, 1);
    const int column = static_cast<int>(2.0 / 25.4 * dpi);
    std::vector<double> seen;
    for (int y = 0; y < picture.height; ++y) {
        int end = y;
        while (end < picture.height && picture.at(column, end) < 0.5) {
            ++end;
        }
        if (end > y) {
            seen.push_back(0.5 * (y + end) * 25.4 / dpi);
            y = end;
        }
    }
    CHECK(seen.size() == items.size());
    CHECK(has(seen, 20.0, 0.05));
    CHECK(has(seen, 80.0, 0.05));
}

TEST_CASE("a turned text runs up the page in both") {
    layout::Page page{60.0_mm, 60.0_mm, "turned", {}};
    layout::PlacedText text;
    text.x = 30.0_mm;
    text.baseline = 50.0_mm;
    text.size_pt = 20.0_pt;
    text.text = "HHHH";
    text.upward = true;
    page.items.emplace_back(text);
    const double width = support::real_measure().width("HHHH", layout::Weight::regular, 20.0_pt).value();
    constexpr int dpi = 254;  // ten pixels a millimetre
    for (const auto& picture : {own_picture(page, dpi, 1), pdf_picture(page, dpi, 1)}) {
        double left = 60.0, right = 0.0, top = 60.0, bottom = 0.0;
        for (int y = 0; y < picture.height; ++y) {
            for (int x = 0; x < picture.width; ++x) {
                if (picture.at(x, y) < 0.5) {
                    left = std::min(left, x / 10.0);
                    right = std::max(right, x / 10.0);
                    top = std::min(top, y / 10.0);
                    bottom = std::max(bottom, y / 10.0);
                }
            }
        }
        CHECK(right <= 30.1);
        CHECK(left >= 30.0 - 0.78 * 20.0 * 25.4 / 72.0);
        CHECK(bottom <= 50.0);
        CHECK(bottom >= 48.5);
        CHECK(near_abs(top, 50.0 - width, 1.5));
    }
}
