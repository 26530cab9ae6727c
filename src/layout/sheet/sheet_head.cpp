// SPDX-License-Identifier: MIT
#include "layout/sheet/sheet_head.hpp"

#include "layout/block/fragment.hpp"
#include "layout/style.hpp"
#include "layout/text/text.hpp"

namespace holdwater::layout {

namespace {

constexpr Millimetres bar_mm = 50.0_mm;
constexpr Millimetres two_inches = 50.8_mm;
constexpr Points head_pt = 9.0_pt;
constexpr Points inch_mark_pt = 0.5_pt;

}  // namespace

void place_sheet_head(Page& page, const Sheet& sheet, const std::string& title, const Measure& measure,
                      const Phrases& phrases) {
    TextStyle style;
    style.size_pt = head_pt;
    style.role = Role::artifact;
    style.quiet_units = false;
    const Millimetres left = sheet.margin_sides + em(inch_mark_pt);  // half a mark is left of its place
    Millimetres baseline = sheet.margin_top + ascent(head_pt);
    const auto words = [&](const std::string& shown) {
        return one_line("*" + card::plain(shown) + " · " + page.name + "* · " + phrases.print_rule, style, measure);
    };
    const std::string fitting = shortened(
        title, [&](const std::string& shown) { return words(shown).width <= sheet.width - sheet.margin_sides - left; });
    place(page.items, words(fitting), left, baseline, style);

    const Millimetres bar_y = sheet.margin_top + leading(head_pt) + 0.9_mm;
    page.items.emplace_back(filled_box(left, bar_y, bar_mm, 1.1_mm));
    const Millimetres inch_y = bar_y + 2.2_mm;
    page.items.emplace_back(line(left, inch_y, left + two_inches, inch_y, inch_mark_pt));
    for (const Millimetres x : {left, left + two_inches}) {
        page.items.emplace_back(line(x, inch_y - 0.7_mm, x, inch_y + 0.7_mm, inch_mark_pt));
    }
    baseline += leading(head_pt);
    place(page.items, one_line(phrases.bar_rule, style, measure), left + two_inches + 3.0_mm, baseline + 0.4_mm, style);
}

}  // namespace holdwater::layout
