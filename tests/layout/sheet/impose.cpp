// SPDX-License-Identifier: MIT
// Sheets: every format on every sheet, in all three ways of printing.
#include "layout/check/geometry.hpp"
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"
#include "support/problems.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;
using support::near_abs;

namespace {

/// Faces with one unmistakable item each: a box over the whole card and its name as text.
std::vector<CardFaces> plain_cards(const Format& format, const std::vector<int>& face_counts) {
    std::vector<CardFaces> cards;
    for (std::size_t c = 0; c < face_counts.size(); ++c) {
        CardFaces card;
        card.key = "card" + std::to_string(c);
        for (int f = 0; f < face_counts[c]; ++f) {
            Page page;
            page.width = format.width;
            page.height = format.height;
            page.name = card.key + "-" + std::to_string(f + 1);
            PlacedText text;
            text.x = 10.0_mm;
            text.baseline = 20.0_mm;
            text.text = page.name;
            text.role = Role::paragraph;
            page.items.emplace_back(text);
            PlacedBox box;
            box.width = format.width;
            box.height = format.height;
            box.role = Role::table;
            page.items.emplace_back(box);
            card.faces.push_back(page);
        }
        cards.push_back(card);
    }
    return cards;
}

std::optional<PlacedText> find(const Page& page, const std::string& name) {
    for (const auto& text : support::texts(page)) {
        if (text.text == name) {
            return text;
        }
    }
    return std::nullopt;
}

std::vector<PlacedLine> cut_marks(const Page& page) {
    std::vector<PlacedLine> found;
    for (const auto& item : page.items) {
        if (const auto* rule = std::get_if<PlacedLine>(&item); rule != nullptr && rule->role == Role::cut_mark) {
            found.push_back(*rule);
        }
    }
    return found;
}

std::vector<PlacedBox> card_boxes(const Page& page) {
    std::vector<PlacedBox> found;
    for (const auto& item : page.items) {
        if (const auto* box = std::get_if<PlacedBox>(&item); box != nullptr && box->role == Role::table) {
            found.push_back(*box);
        }
    }
    return found;
}

std::vector<Page> sheets_of(const Format& format, const Sheet& sheet, Sides sides, const std::vector<int>& counts,
                            int copies = 1) {
    auto made = impose(plain_cards(format, counts), format, sheet, sides, copies, "Trip", measure);
    REQUIRE(made.ok());
    return *made;
}

}  // namespace

TEST_CASE("every format on every sheet: within the printer's margins, cards apart, the bar 50 mm and 2 in") {
    for (const char* format_name : {"hand", "pocket", "wallet", "large"}) {
        for (const char* sheet_name : {"a4", "letter"}) {
            for (const Sides sides : {Sides::duplex, Sides::single, Sides::fold}) {
                const Format format = support::format(format_name);
                const Sheet sheet = support::sheet(sheet_name);
                CAPTURE(std::string(format_name));
                CAPTURE(std::string(sheet_name));
                const auto pages = sheets_of(format, sheet, sides, {2, 2, 1, 4, 2, 2, 2, 2, 2, 2, 2});
                const Rect printable{sheet.margin_sides, sheet.margin_top, sheet.width - sheet.margin_sides,
                                     sheet.height - sheet.margin_bottom};
                for (const auto& page : pages) {
                    CHECK(page.width == sheet.width);
                    CHECK(page.height == sheet.height);
                    for (const auto& item : page.items) {
                        if (std::holds_alternative<PlacedText>(item)) {
                            continue;  // the fake typeface is wider than the real one; draw's tests look at text
                        }
                        CHECK(printable.grown(1e-6_mm).holds(extent(item)));
                    }
                    const auto boxes = card_boxes(page);
                    for (std::size_t i = 0; i < boxes.size(); ++i) {
                        for (std::size_t k = i + 1; k < boxes.size(); ++k) {
                            CHECK_FALSE(extent(boxes[i]).grown(-1e-6_mm).overlaps(extent(boxes[k]).grown(-1e-6_mm)));
                        }
                    }
                    const bool has_bar = std::any_of(page.items.begin(), page.items.end(), [](const Item& item) {
                        const auto* box = std::get_if<PlacedBox>(&item);
                        return box != nullptr && box->filled && near_abs(box->width, 50.0_mm, 1e-9);
                    });
                    const bool has_inches = std::any_of(page.items.begin(), page.items.end(), [](const Item& item) {
                        const auto* rule = std::get_if<PlacedLine>(&item);
                        return rule != nullptr && near_abs(rule->x2 - rule->x1, 50.8_mm, 1e-9);
                    });
                    CHECK(has_bar);
                    CHECK(has_inches);
                    const std::string words = support::all_text(page);
                    CHECK(words.find("donotusetherulers") != std::string::npos);
                    CHECK(words.find("100%,noscaling") != std::string::npos);
                    CHECK(words.find(support::squeezed("Trip · " + page.name)) != std::string::npos);
                }
            }
        }
    }
}

TEST_CASE("as many up as the design says") {
    const auto up = [](const char* format, const char* sheet) {
        const auto pages =
            sheets_of(support::format(format), support::sheet(sheet), Sides::single, std::vector<int>(30, 1));
        return card_boxes(pages[0]).size();
    };
    CHECK(up("hand", "a4") == 4);
    CHECK(up("hand", "letter") == 4);
    CHECK(up("pocket", "a4") == 6);
    CHECK(up("pocket", "letter") == 6);
    CHECK(up("large", "a4") == 2);
    CHECK(up("large", "letter") == 2);
    CHECK(up("wallet", "a4") == 8);
    CHECK(up("wallet", "letter") == 8);
}

TEST_CASE("turned about its long edge, the sheet shows each back behind its face") {
    for (const char* name : {"hand", "pocket"}) {
        const Format format = support::format(name);
        const Sheet sheet = support::sheet("a4");
        const auto pages = sheets_of(format, sheet, Sides::duplex, {2, 1, 4, 2, 2, 2});
        REQUIRE(pages.size() % 2 == 0);
        int pairs = 0;
        for (std::size_t p = 0; p < pages.size(); p += 2) {
            CHECK(pages[p].name.find("front") != std::string::npos);
            CHECK(pages[p + 1].name.find("back") != std::string::npos);
            CHECK(cut_marks(pages[p + 1]).empty());
            CHECK_FALSE(cut_marks(pages[p]).empty());
            for (const auto& text : support::texts(pages[p])) {
                if (text.text.rfind("card", 0) != 0) {
                    continue;
                }
                std::string back = text.text;
                back.back() = static_cast<char>(back.back() + 1);
                const auto behind = find(pages[p + 1], back);
                if (!behind) {
                    CHECK(text.text == "card1-1");  // the one without a back
                    continue;
                }
                ++pairs;
                // The text stands 10 mm from the left of its card on both: left edges mirror about the sheet's middle.
                const Millimetres front_left = text.x - 10.0_mm;
                const Millimetres back_left = behind->x - 10.0_mm;
                CHECK(near_abs(front_left + format.width + back_left, sheet.width, 1e-9));
                CHECK(near_abs(text.baseline, behind->baseline, 1e-9));
            }
        }
        CHECK(pairs == 6);
    }
}

TEST_CASE("single-sided: every face is a front; copies repeat the deck") {
    const Format format = support::format("hand");
    const auto pages = sheets_of(format, support::sheet("letter"), Sides::single, {2, 1}, 3);
    std::size_t cards = 0;
    for (const auto& page : pages) {
        cards += card_boxes(page).size();
        CHECK_FALSE(cut_marks(page).empty());
    }
    CHECK(cards == 9);
    CHECK(pages.size() == 3);
}

TEST_CASE("folded: face and back side by side on the long edge, the fold marked outside only") {
    const Format hand = support::format("hand");
    auto page = sheets_of(hand, support::sheet("a4"), Sides::fold, {2})[0];
    auto front = find(page, "card0-1");
    auto back = find(page, "card0-2");
    REQUIRE(front);
    REQUIRE(back);
    CHECK(near_abs(back->x - front->x, hand.width, 1e-9));
    CHECK(near_abs(back->baseline, front->baseline, 1e-9));
    const Format pocket = support::format("pocket");
    page = sheets_of(pocket, support::sheet("a4"), Sides::fold, {2})[0];
    front = find(page, "card0-1");
    back = find(page, "card0-2");
    REQUIRE(back);
    CHECK(near_abs(back->baseline - front->baseline, pocket.height, 1e-9));
    CHECK(near_abs(back->x, front->x, 1e-9));
    const auto marks = cut_marks(page);
    CHECK(std::any_of(marks.begin(), marks.end(), [](const auto& mark) { return !mark.dash_mm.empty(); }));
}

TEST_CASE("marks stand in line with the cuts and touch nothing but the quiet zone") {
    const Format format = support::format("hand");
    const auto page = sheets_of(format, support::sheet("a4"), Sides::duplex, {1, 1, 1, 1})[0];
    const auto boxes = card_boxes(page);
    REQUIRE(boxes.size() == 4);
    for (const auto& mark : cut_marks(page)) {
        CHECK(mark.width_pt >= 0.4_pt);
        const bool upright = mark.x1 == mark.x2;
        const bool in_line = std::any_of(boxes.begin(), boxes.end(), [&](const PlacedBox& box) {
            return upright ? near_abs(mark.x1, box.x, 1e-9) || near_abs(mark.x1, box.x + box.width, 1e-9)
                           : near_abs(mark.y1, box.y, 1e-9) || near_abs(mark.y1, box.y + box.height, 1e-9);
        });
        CHECK(in_line);
        for (const auto& box : boxes) {
            const Rect content = Rect{box.x, box.y, box.x + box.width, box.y + box.height}.grown(-format.margin);
            CHECK_FALSE(content.overlaps(extent(mark)));
        }
    }
}

TEST_CASE("ticks that start at a cut keep off it on a back, by what backs may lie off, and nowhere else") {
    const Format format = support::format("hand");
    std::vector<CardFaces> cards = plain_cards(format, {2});
    for (Page& face : cards[0].faces) {
        for (const bool upright : {false, true}) {
            PlacedLine tick;
            tick.role = Role::ruler_tick;
            (upright ? tick.x1 : tick.y1) = (upright ? tick.x2 : tick.y2) = 50.0_mm;
            (upright ? tick.y1 : tick.x1) = upright ? format.height : 0.0_mm;
            (upright ? tick.y2 : tick.x2) = upright ? format.height - 7.0_mm : 7.0_mm;
            face.items.emplace_back(tick);
        }
    }
    for (const Sides sides : {Sides::duplex, Sides::single, Sides::fold}) {
        const auto made = impose(cards, format, support::sheet("a4"), sides, 1, "Trip", measure);
        REQUIRE(made.ok());
        std::size_t faces = 0;
        for (const Page& page : *made) {
            const auto boxes = card_boxes(page);
            for (const auto& box : boxes) {
                ++faces;
                const bool on_back = sides == Sides::duplex && page.name.find("back") != std::string::npos;
                const Millimetres kept = on_back ? 2.0_mm : 0.0_mm;
                std::size_t ticks = 0;
                for (const auto& item : page.items) {
                    const auto* rule = std::get_if<PlacedLine>(&item);
                    if (rule == nullptr || rule->role != Role::ruler_tick) {
                        continue;
                    }
                    const bool upright = rule->x1 == rule->x2;
                    const bool mine = upright ? rule->x1 > box.x && rule->x1 < box.x + box.width && rule->y2 > box.y &&
                                                    rule->y2 < box.y + box.height
                                              : rule->x2 > box.x && rule->x2 < box.x + box.width && rule->y1 > box.y &&
                                                    rule->y1 < box.y + box.height;
                    if (!mine) {
                        continue;
                    }
                    ++ticks;
                    CHECK(near_abs(upright ? box.y + box.height - rule->y1 : rule->x1 - box.x, kept, 1e-9));
                    CHECK(near_abs(upright ? box.y + box.height - rule->y2 : rule->x2 - box.x, 7.0_mm, 1e-9));
                }
                CHECK(ticks == 2);
            }
        }
        CHECK(faces == 2);
    }
}

TEST_CASE("a sheet that holds no card is refused with both sizes") {
    Sheet small;
    small.name = "postcard";
    small.width = 100.0_mm;
    small.height = 148.0_mm;
    const auto made = impose({}, support::format("large"), small, Sides::duplex, 1, "Trip", measure);
    CHECK_FALSE(made.ok());
    CHECK(made.problems()[0].code == problem::Code("sheet-too-small"));
    CHECK(made.problems()[0].message.find("postcard (100 x 148 mm)") != std::string::npos);
    CHECK(made.problems()[0].message.find("large (190 x 124 mm)") != std::string::npos);
    CHECK_FALSE(impose({}, support::format("hand"), small, Sides::fold, 1, "Trip", measure).ok());
}

TEST_CASE("the overview holds every face once, smaller, within its page") {
    const Format format = support::format("hand");
    const Page page = contact_sheet(plain_cards(format, {2, 1, 4}), 3, 200.0_mm);
    const auto boxes = card_boxes(page);
    REQUIRE(boxes.size() == 7);
    for (const auto& box : boxes) {
        CHECK(near_abs(box.width / box.height, format.width / format.height, 1e-9));
        CHECK(Rect{0.0_mm, 0.0_mm, page.width, page.height}.holds(extent(box)));
    }
    CHECK(page.width == 200.0_mm);
    CHECK(contact_sheet({}, 3, 200.0_mm).items.empty());
}
