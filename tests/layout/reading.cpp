// SPDX-License-Identifier: MIT
// The reading order that faces carry, and figures described in words.
#include "layout/reading.hpp"

#include "layout/block/blocks.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/sample_deck.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;

namespace {

std::vector<CardFaces> faces_in(const std::string& name) {
    return lay_out(support::sample_deck(), support::format(name), measure).value();
}

/// The words of a group's rows and cells, in reading order.
std::map<std::pair<int, int>, std::string> cells_of(const Page& page, int group) {
    std::map<std::pair<int, int>, std::string> made;
    for (const auto& text : support::texts(page)) {
        if (text.spot.group == group) {
            made[{text.spot.row, text.spot.cell}] += support::squeezed(text.text);
        }
    }
    return made;
}

int first_of(const Page& page, Tag tag) {
    for (std::size_t i = 0; i < page.groups.size(); ++i) {
        if (page.groups[i].tag == tag) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

}  // namespace

TEST_CASE("every text of every face is read, the foot once a card, and each face begins with its name and question") {
    for (const char* name : {"hand", "pocket", "large"}) {
        for (const auto& card : faces_in(name)) {
            for (const auto& page : card.faces) {
                CAPTURE(page.name);
                const bool first = &page == &card.faces.front();
                Millimetres foot = page.height;
                for (const auto& text : support::texts(page)) {
                    foot = text.role == Role::artifact ? std::min(foot, text.baseline) : foot;
                }
                for (const auto& text : support::texts(page)) {
                    const bool read = text.spot.group >= 0;
                    CHECK_MESSAGE((read || (!first && text.baseline > foot - 0.1_mm)), text.text);
                    CHECK((first || text.role != Role::artifact || !read));
                    CHECK(text.spot.group < static_cast<int>(page.groups.size()));
                }
                REQUIRE(page.groups.front().tag == Tag::title);
                const auto title = cells_of(page, 0);
                REQUIRE(title.size() == 2);
                CHECK(title.at({1, -1}).back() == '?');
            }
        }
    }
}

TEST_CASE("tables, ladders and grids to write in know their rows and cells") {
    const auto cards = faces_in("hand");
    const auto page_with = [&](const char* key, Tag tag) -> const Page& {
        for (const auto& card : cards) {
            for (const auto& page : card.faces) {
                if (card.key == key && first_of(page, tag) >= 0) {
                    return page;
                }
            }
        }
        throw std::runtime_error(key);
    };
    const Page& hold = page_with("hold", Tag::table);
    const auto table = cells_of(hold, first_of(hold, Tag::table));
    CHECK(table.at({-1, -1}) == "Hoursfromfoodin,porkloin,round");
    CHECK(table.at({0, 0}) == "thick");
    CHECK(table.at({1, 0}) == "40mm");
    CHECK(table.at({6, 3}) == "10h00");
    const Page& top_up = page_with("top-up", Tag::table);
    const auto ladder = cells_of(top_up, first_of(top_up, Tag::table));
    CHECK(ladder.at({0, 0}) == "bathreads");
    CHECK(ladder.at({2, 0}) == "64°C");
    CHECK(ladder.at({2, 2}) == "1.5L");
    CHECK(ladder.at({7, 0}) == "below57°C");
    CHECK(ladder.at({7, 1}) == "gotoLimits,card7");
    const Page& log = page_with("log", Tag::table);
    CHECK(cells_of(log, first_of(log, Tag::table)).contains({1, 0}));
    const Page& fill = page_with("fill", Tag::list);
    const auto steps = cells_of(fill, first_of(fill, Tag::list));
    CHECK(steps.at({0, 0}) == "1");
    CHECK(steps.at({0, 1}).starts_with("Setthebox"));
}

TEST_CASE("a figure owns its lines, anything else only its texts") {
    for (const auto& card : faces_in("hand")) {
        for (const auto& page : card.faces) {
            std::set<int> drawn;
            for (const auto& item : page.items) {
                const int group = std::visit([](const auto& one) { return one.spot.group; }, item);
                if (!std::holds_alternative<PlacedText>(item) && group >= 0) {
                    drawn.insert(group);
                }
            }
            for (std::size_t i = 0; i < page.groups.size(); ++i) {
                CAPTURE(page.name);
                const bool figure = page.groups[i].tag == Tag::figure;
                CHECK(drawn.contains(static_cast<int>(i)) == figure);
                const bool opens = page.groups[i].tag == Tag::title && page.name.ends_with("-1");
                CHECK(page.groups[i].alt.empty() != (figure || opens));
            }
        }
    }
}

TEST_CASE("sheets and overviews go on with the reading order of what is put on them") {
    Page one{10.0_mm, 10.0_mm, "one", {}};
    Fragment words;
    words.items.emplace_back(PlacedText{});
    put_group(one, words, 1.0_mm, 2.0_mm);
    Page sheet{100.0_mm, 100.0_mm, "sheet", {}};
    put_page(sheet, one, 10.0_mm, 10.0_mm);
    put_page(sheet, one, 20.0_mm, 10.0_mm, 2.0);
    REQUIRE(sheet.groups.size() == 2);
    const auto texts = support::texts(sheet);
    CHECK(texts[0].spot.group == 0);
    CHECK(texts[1].spot.group == 1);
    CHECK(texts[0].x == 11.0_mm);
    CHECK(texts[1].x == 22.0_mm);
    CHECK(contact_sheet(faces_in("hand"), 4, 200.0_mm).scale < 0.6);
}

TEST_CASE("figures in words: only what is drawn, and a bath never warmer than the line") {
    card::Ruler ruler;
    ruler.title = "Loin. *Bath* 60\u00A0°C";
    ruler.ticks = {{20.0, "45\u00A0min", false}, {25.0, "", false}, {40.0, "2 h", true}, {60.0, "5 h", false}};
    ruler.too_thick_mm = 70.0;
    ruler.too_thick_label = "split it";
    CHECK(described(ruler, 70.0_mm) == "Loin. Bath 60 °C. 20 mm: 45 min; 40 mm: 2 h; 60 mm: 5 h; 70 mm: split it");
    CHECK(described(ruler, 40.0_mm) == "Loin. Bath 60 °C. 20 mm: 45 min; 40 mm: 2 h");  // cut off: no bar for too thick

    card::Curve curve;
    curve.title = "Night";
    curve.likely = {{0.0, 69.9}, {2.0, 60.9}};
    curve.low = {{0.0, 69.9}, {2.0, 58.9}};
    curve.high = {{0.0, 69.9}, {2.0, 61.1}};
    curve.x_labels = {{0.0, "0"}, {2.0, "2"}, {3.0, "3"}};
    curve.x_title = "hours";
    curve.y_title = "bath, °C";
    curve.floor_label = "floor";
    CHECK(described(curve) == "Night. hours / bath, °C. 0: 69 (69–70); 2: 60 (58–62). floor");

    card::DayBar bar;
    bar.spans = {{card::DayBar::Kind::cook, 1.0, 2.0, "cook"}, {card::DayBar::Kind::hold, 2.0, 3.0, ""}};
    bar.marks = {{3.0, "03:00", "eat"}, {1.0, "01:00", ""}};
    CHECK(described(bar) == "cook. 01:00; 03:00 eat");
}
