// SPDX-License-Identifier: MIT
// Each check is shown a face that breaks it, and one that just does not.
#include "layout/check/geometry.hpp"
#include "layout/layout.hpp"
#include "layout/style.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace holdwater;
using namespace holdwater::layout;
using support::has_code;
using support::measure;

namespace {

const Format in_hand = support::format("hand");

PlacedText text_at(Millimetres x, Millimetres baseline, const std::string& text, Points size_pt = 10.0_pt,
                   Role role = Role::paragraph) {
    PlacedText made;
    made.x = x;
    made.baseline = baseline;
    made.text = text;
    made.size_pt = size_pt;
    made.role = role;
    made.width = measure.width(text, made.face, size_pt);
    return made;
}

/// A face with a caution and the given items.
problem::Problems found(std::vector<Item> items, bool with_caution = true) {
    Page page;
    page.width = in_hand.width;
    page.height = in_hand.height;
    page.name = "hold-1";
    if (with_caution) {
        page.items.emplace_back(text_at(6.0_mm, 110.0_mm, "Scalding water", 11.0_pt, Role::caution));
    }
    page.items.insert(page.items.end(), items.begin(), items.end());
    return check_faces({{"hold", {page}}}, in_hand, measure);
}

/// The size at which a capital (0.75 em) has so many arc minutes at 450 mm; by the tangent of the whole angle, which
/// differs from the check's own formula by less than 1e-5 of the size.
Points size_for(double arcmin) {
    return Points{450.0 * std::tan(arcmin / 60.0 * std::acos(-1.0) / 180.0) / (0.75 * 25.4 / 72.0)};
}

}  // namespace

TEST_CASE("a sound face has no findings") {
    CHECK(found({text_at(6.0_mm, 20.0_mm, "Stir before each reading")}).empty());
}

TEST_CASE("type sizes by role, at the limit") {
    for (const auto& [role, arcmin] :
         {std::pair{Role::paragraph, 16.0}, {Role::heading, 16.0}, {Role::caution, 20.0}}) {
        CHECK(has_code(found({text_at(6.0_mm, 20.0_mm, "12 min", size_for(arcmin) * 0.999, role)}), "type-too-small"));
        CHECK(found({text_at(6.0_mm, 20.0_mm, "12 min", size_for(arcmin) * 1.001, role)}).empty());
    }
    for (const Role role : {Role::table, Role::key_number, Role::ruler_tick}) {
        CHECK(has_code(found({text_at(6.0_mm, 20.0_mm, "12", size_for(20.0) * 0.999, role)}), "type-too-small"));
        CHECK(found({text_at(6.0_mm, 20.0_mm, "12", size_for(20.0) * 1.001, role)}).empty());
        CHECK(found({text_at(6.0_mm, 20.0_mm, "min", size_for(16.0) * 1.001, role)}).empty());
    }
    CHECK(found({text_at(6.0_mm, 20.0_mm, "trip and stamp", 7.5_pt, Role::artifact)}).empty());
}

TEST_CASE("edges: nothing over the card, nothing but ticks and marks in the quiet zone") {
    CHECK(has_code(found({text_at(85.0_mm, 20.0_mm, "far out")}), "overflow"));
    CHECK(has_code(found({text_at(2.0_mm, 20.0_mm, "near")}), "quiet-zone"));
    PlacedLine rule;
    rule.x1 = 0.0_mm;
    rule.x2 = 7.0_mm;
    rule.y1 = rule.y2 = 50.0_mm;
    CHECK(has_code(found({rule}), "quiet-zone"));
    rule.role = Role::ruler_tick;
    CHECK(found({rule}).empty());
    rule.x1 = -2.0_mm;
    CHECK(has_code(found({rule}), "overflow"));
    CHECK(has_code(found({text_at(2.0_mm, 20.0_mm, "near", 11.0_pt, Role::ruler_tick)}), "quiet-zone"));
    PlacedBox box;
    box.x = 4.0_mm;
    box.y = 40.0_mm;
    box.width = 84.0_mm;
    box.height = 10.0_mm;
    box.filled = true;
    CHECK(found({box}).empty());
    box.stroke_pt = 1.0_pt;  // half of it lies outside
    CHECK(has_code(found({box}), "quiet-zone"));
}

TEST_CASE("texts on each other, under lines, over the edge of a box, under a box") {
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "one"), text_at(12.0_mm, 21.0_mm, "two")}), "overlap"));
    CHECK(found({text_at(10.0_mm, 20.0_mm, "one"), text_at(10.0_mm, 24.5_mm, "two")}).empty());
    PlacedLine rule;
    rule.x1 = 5.0_mm;
    rule.x2 = 80.0_mm;
    rule.y1 = rule.y2 = 19.0_mm;
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "struck"), rule}), "text-crossed"));
    rule.y1 = rule.y2 = 21.0_mm;
    CHECK(found({text_at(10.0_mm, 20.0_mm, "one", 10.0_pt), rule}).empty());
    PlacedBox box;
    box.x = 12.0_mm;
    box.y = 15.0_mm;
    box.width = 30.0_mm;
    box.height = 8.0_mm;
    box.stroke_pt = 1.0_pt;
    CHECK(has_code(found({box, text_at(10.0_mm, 20.0_mm, "over the edge")}), "text-crossed"));
    box.x = 5.0_mm;
    box.filled = true;
    box.fill_grey = 1.0;
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "hidden"), box}), "text-crossed"));
    // On a white plate the lines beneath do not matter.
    rule.y1 = rule.y2 = 19.0_mm;
    box.stroke_pt = 0.0_pt;
    CHECK(found({rule, box, text_at(10.0_mm, 20.0_mm, "plate")}).empty());
    PlacedPath path;
    path.points = {{5.0_mm, 10.0_mm}, {40.0_mm, 30.0_mm}};
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "a long text across"), path}), "text-crossed"));
}

TEST_CASE("contrast with the ground, rules that printers lose, glyphs, cautions") {
    PlacedText pale = text_at(10.0_mm, 20.0_mm, "pale");
    pale.grey = 0.36;  // #5C5C5C: 6.8
    CHECK(has_code(found({pale}), "contrast-too-low"));
    pale.grey = 0.34;  // #575757: 7.2
    CHECK(found({pale}).empty());
    PlacedText white = text_at(10.0_mm, 20.0_mm, "white");
    white.grey = 1.0;
    CHECK(has_code(found({white}), "contrast-too-low"));
    PlacedBox bar;
    bar.x = 5.0_mm;
    bar.y = 15.0_mm;
    bar.width = 50.0_mm;
    bar.height = 8.0_mm;
    bar.filled = true;
    CHECK(found({bar, white}).empty());
    CHECK(has_code(found({bar, text_at(10.0_mm, 20.0_mm, "black on black")}), "contrast-too-low"));
    PlacedLine thin;
    thin.x1 = 10.0_mm;
    thin.x2 = 20.0_mm;
    thin.y1 = thin.y2 = 50.0_mm;
    thin.width_pt = 0.39_pt;
    CHECK(has_code(found({thin}), "rule-too-thin"));
    thin.width_pt = 0.4_pt;
    CHECK(found({thin}).empty());
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "\u2603")}), "glyph-missing"));
    CHECK(has_code(found({text_at(10.0_mm, 20.0_mm, "no caution")}, false), "caution-missing"));
}

TEST_CASE("the ink of turned text stands beside its origin") {
    PlacedText text = text_at(20.0_mm, 60.0_mm, "abc");
    text.upward = true;
    const Rect ink = extent(text);
    CHECK(ink.x2 - ink.x1 < ink.y2 - ink.y1);
    CHECK(ink.y2 == 60.0_mm);
    CHECK(ink.x1 < 20.0_mm);
    CHECK(enters({0.0_mm, 0.0_mm, 10.0_mm, 10.0_mm}, -5.0_mm, 5.0_mm, 15.0_mm, 5.0_mm));
    CHECK(enters({0.0_mm, 0.0_mm, 10.0_mm, 10.0_mm}, -5.0_mm, -5.0_mm, 15.0_mm, 15.0_mm));
    CHECK_FALSE(enters({0.0_mm, 0.0_mm, 10.0_mm, 10.0_mm}, -5.0_mm, 11.0_mm, 15.0_mm, 11.0_mm));
    CHECK_FALSE(enters({0.0_mm, 0.0_mm, 10.0_mm, 10.0_mm}, 12.0_mm, -5.0_mm, 30.0_mm, 15.0_mm));
}
