// SPDX-License-Identifier: MIT
// Plain sheets: what stands on them, how they go on, and what is refused.
#include "layout/check/geometry.hpp"
#include "layout/layout.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;
using support::near_abs;

namespace {

card::Sheets sheets_with(std::vector<card::SheetBlock> blocks) {
    card::Sheets sheets;
    sheets.name = "Basis";
    sheets.title = "Trip";
    sheets.stamp = "TEST-TEST";
    sheets.language = "en";
    sheets.footer = "rules have the last word";
    sheets.blocks = std::move(blocks);
    return sheets;
}

card::SheetBlock block(card::Block one) {
    return card::SheetBlock{std::move(one)};
}

card::Table long_table(std::size_t rows) {
    card::Table table;
    table.title = "Numbers";
    table.columns = {{"firsthead", card::Align::left, false}, {"secondhead", card::Align::left, false}};
    for (std::size_t i = 0; i < rows; ++i) {
        std::string words = "row" + std::to_string(i) + ".";
        for (std::size_t k = 0; k < i % 5 * 8; ++k) {
            words += " word";
        }
        table.rows.push_back({"key" + std::to_string(i) + ".", words});
    }
    return table;
}

problem::Result<std::vector<Page>> laid(const card::Sheets& sheets, const std::string& paper) {
    return lay_out_sheets(sheets, support::format("plain"), support::sheet(paper), measure);
}

std::vector<Page> pages_of(const card::Sheets& sheets, const std::string& paper) {
    const auto made = laid(sheets, paper);
    CAPTURE(made.problems().empty() ? std::string() : problem::to_line(made.problems().front()));
    REQUIRE(made.ok());
    return *made;
}

std::size_t count_of(const Page& page, const std::string& text) {
    const auto all = support::texts(page);
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [&](const PlacedText& one) { return one.text == text; }));
}

bool refused(std::vector<card::SheetBlock> blocks, problem::Code code) {
    const auto made = laid(sheets_with(std::move(blocks)), "a4");
    return !made.ok() && support::has_code(made.problems(), code);
}

}  // namespace

TEST_CASE("every plain sheet says what it is, carries the bar, its place and the foot, and keeps the margins") {
    for (const char* paper : {"a4", "letter"}) {
        CAPTURE(std::string(paper));
        const auto pages = pages_of(sheets_with({block(card::Note{"A note."}), block(long_table(120))}), paper);
        const Sheet sheet = support::sheet(paper);
        REQUIRE(pages.size() >= 3);
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const Page& page = pages[i];
            CHECK(page.width == sheet.width);
            CHECK(page.height == sheet.height);
            CHECK(page.name == "sheet " + std::to_string(i + 1) + " of " + std::to_string(pages.size()));
            const std::string words = support::all_text(page);
            for (const char* said :
                 {"Trip·BasisTEST-TEST", "donotusetherulers", "100%,noscaling", "ruleshavethelastword"}) {
                CAPTURE(std::string(said));
                CHECK(words.find(said) != std::string::npos);
            }
            CHECK(words.find(support::squeezed(page.name)) != std::string::npos);
            const bool has_bar = std::any_of(page.items.begin(), page.items.end(), [](const Item& item) {
                const auto* box = std::get_if<PlacedBox>(&item);
                return box != nullptr && box->filled && near_abs(box->width, 50.0_mm, 1e-9);
            });
            CHECK(has_bar);
            const Rect printable{sheet.margin_sides, sheet.margin_top, sheet.width - sheet.margin_sides,
                                 sheet.height - sheet.margin_bottom};
            for (const auto& item : page.items) {
                CHECK(printable.grown(0.15_mm).holds(extent(item)));
            }
            for (const auto& text : support::texts(page)) {
                CHECK((text.role == Role::artifact || text.size_pt >= 8.0_pt));  // 10 pt, units after a figure quieter
            }
        }
    }
}

TEST_CASE("a table that goes on repeats its head and its title, loses no row and leaves none alone") {
    for (const char* paper : {"a4", "letter"}) {
        for (std::size_t rows = 30; rows < 75; rows += 3) {
            CAPTURE(rows);
            const auto pages = pages_of(sheets_with({block(card::Heading{"About"}), block(long_table(rows))}), paper);
            std::size_t seen = 0;
            for (std::size_t p = 0; p < pages.size(); ++p) {
                std::size_t here = 0;
                for (std::size_t i = 0; i < rows; ++i) {
                    const std::size_t n = count_of(pages[p], "key" + std::to_string(i) + ".");
                    CHECK(n <= 1);
                    here += n;
                }
                seen += here;
                CHECK(here >= 2);
                CHECK(count_of(pages[p], "firsthead") == 1);
                CHECK(count_of(pages[p], "secondhead") == 1);
                CHECK(count_of(pages[p], p == 0 ? "Numbers" : "Numbers · continued") == 1);
            }
            CHECK(seen == rows);
        }
    }
}

TEST_CASE("a heading is never the last thing on a sheet") {
    for (int notes = 20; notes < 60; ++notes) {
        CAPTURE(notes);
        std::vector<card::SheetBlock> blocks;
        for (int i = 0; i < notes; ++i) {
            blocks.push_back(block(card::Note{"Some words on one line."}));
        }
        blocks.push_back(block(card::Heading{"Lonely?"}));
        blocks.push_back(block(card::Heading{"Still?"}));
        blocks.push_back(block(card::Note{"No."}));
        for (const auto& page : pages_of(sheets_with(blocks), "letter")) {
            CHECK(count_of(page, "Lonely?") == count_of(page, "Still?"));
            CHECK(count_of(page, "Still?") == count_of(page, "No."));
        }
    }
}

TEST_CASE("steps that go on to the next sheet go on counting; a turn starts a sheet, two turns do not waste one") {
    card::Steps steps;
    for (int i = 0; i < 80; ++i) {
        steps.steps.push_back({"", "Step " + std::to_string(i + 1) + " says this."});
    }
    const auto pages = pages_of(sheets_with({block(steps)}), "a4");
    REQUIRE(pages.size() == 2);
    for (int i = 1; i <= 80; ++i) {
        const std::string number = std::to_string(i);
        CHECK(count_of(pages[0], number) + count_of(pages[1], number) == 1);
        CHECK(count_of(pages[0], number) == count_of(pages[0], "Step " + number + " says this."));
    }
    const card::SheetBlock note = block(card::Note{"Words."});
    const card::SheetBlock turn = block(card::Turn{});
    CHECK(pages_of(sheets_with({note, turn, turn, note, turn}), "a4").size() == 2);
}

TEST_CASE("what does not fit a sheet is refused by name, and nothing is left out in silence") {
    std::string endless;
    for (int i = 0; i < 4000; ++i) {
        endless += "words ";
    }
    CHECK(refused({block(card::Note{endless})}, "block-too-tall"));
    card::Table tall;
    tall.columns = {{"", card::Align::left, false}};
    tall.rows = {{"short"}, {endless}, {"short"}};
    CHECK(refused({block(tall)}, "block-too-tall"));
    card::Table wide = long_table(3);
    wide.rows[1][1] = std::string(140, 'w');
    CHECK(refused({block(wide)}, "block-too-wide"));
    card::Ruler ruler;
    ruler.title = "ruler";
    CHECK(refused({block(ruler)}, "not-for-sheets"));
    CHECK(refused({block(card::Note{"a snowman \u2603"})}, "glyph-missing"));
}

TEST_CASE("a title too long for the head is cut short, the rule beside it never") {
    card::Sheets sheets = sheets_with({block(card::Note{"Words."})});
    for (int i = 0; i < 12; ++i) {
        sheets.title += " über die Hütte";
    }
    const auto pages = pages_of(sheets, "letter");
    const std::string words = support::all_text(pages[0]);
    CHECK(words.find("\u2026") != std::string::npos);
    CHECK(words.find("100%,noscaling") != std::string::npos);
}
