// SPDX-License-Identifier: MIT
// Things to cut out of plain sheets at true scale: strips of any length, the template for laminating film.
#include "layout/check/geometry.hpp"
#include "layout/layout.hpp"
#include "layout/sheet/strip_cuts.hpp"
#include "support/faces.hpp"
#include "support/fake_measure.hpp"
#include "support/page_near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

using namespace holdwater;
using namespace holdwater::layout;
using support::measure;
using support::near_abs;

namespace {

constexpr double true_to = 0.05;  // mm

card::Strip strip_of(double length, double unit) {
    card::Strip strip;
    strip.title = "Trip · TEST-TEST";
    strip.foot_label = "this end down";
    strip.joint_lower = "Glue the next piece here.";
    strip.joint_upper = "this end on the line";
    for (int i = 1; i * unit < length; ++i) {
        strip.marks.push_back({i * unit, i % 5 == 0 ? std::to_string(i) + "\u00A0L" : "", false});
    }
    strip.marks.push_back({0.31 * length, "*cold* 3 L", true});
    strip.marks.push_back({0.8 * length, "*fill* 30 L", true});
    strip.marks.push_back({length, "*full*", true});
    std::stable_sort(strip.marks.begin(), strip.marks.end(),
                     [](const auto& a, const auto& b) { return a.at_mm < b.at_mm; });
    strip.length_mm = length;
    return strip;
}

std::vector<Page> pages_of(std::vector<card::SheetBlock> blocks, const std::string& paper) {
    card::Sheets sheets;
    sheets.name = "Basis";
    sheets.title = "Trip";
    sheets.blocks = std::move(blocks);
    const auto made = lay_out_sheets(sheets, support::format("plain"), support::sheet(paper), measure);
    CAPTURE(made.problems().empty() ? std::string() : problem::to_line(made.problems().front()));
    REQUIRE(made.ok());
    return *made;
}

/// A piece as it can be measured on the paper.
struct Found {
    Millimetres left;
    Millimetres top;
    Millimetres foot;
    std::optional<Millimetres> joint;  // the dashed line
    std::vector<Millimetres> ticks;
};

std::vector<Found> pieces_on(const Page& page) {
    std::map<Millimetres, Found> by_left;
    std::vector<PlacedLine> lines;
    for (const auto& item : page.items) {
        if (const auto* one = std::get_if<PlacedLine>(&item)) {
            lines.push_back(*one);
        }
    }
    for (const auto& one : lines) {
        if (one.role == Role::cut_mark && one.y1 == one.y2) {
            auto [at, fresh] = by_left.try_emplace(one.x1);
            Found& piece = at->second;
            piece.left = one.x1;
            piece.top = fresh ? one.y1 : std::min(piece.top, one.y1);
            piece.foot = std::max(piece.foot, one.y1);
        }
    }
    for (const auto& one : lines) {
        if (one.role != Role::ruler_tick || one.y1 != one.y2 || !by_left.contains(one.x1)) {
            continue;  // a leader
        }
        Found& piece = by_left[one.x1];
        if (one.dash_mm.empty()) {
            piece.ticks.push_back(one.y1);
        } else {
            piece.joint = one.y1;
        }
    }
    std::vector<Found> found;
    for (const auto& [left, piece] : by_left) {
        found.push_back(piece);
    }
    return found;
}

/// Every tick of a strip as its height over the strip's foot, measured along the pieces as they are glued.
std::vector<Millimetres> measured(const std::vector<Found>& pieces) {
    std::vector<Millimetres> heights;
    Millimetres from;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        for (const Millimetres y : pieces[i].ticks) {
            heights.push_back(from + pieces[i].foot - y);
        }
        if (i + 1 < pieces.size()) {
            REQUIRE(pieces[i].joint.has_value());
            from += pieces[i].foot - *pieces[i].joint;
        }
    }
    std::sort(heights.begin(), heights.end());
    return heights;
}

}  // namespace

TEST_CASE("a strip measures true along all its pieces, whatever its length, on both sheets") {
    for (const char* paper : {"a4", "letter"}) {
        for (const double length : {90.0, 180.0, 245.0, 262.0, 285.0, 361.0, 480.0, 640.0, 905.5}) {
            for (const double unit : {2.1, 5.0, 6.386, 11.7, 48.3}) {
                CAPTURE(std::string(paper));
                CAPTURE(length);
                CAPTURE(unit);
                const card::Strip strip = strip_of(length, unit);
                std::vector<Found> pieces;
                for (const Page& page : pages_of({card::SheetBlock{strip}}, paper)) {
                    const auto more = pieces_on(page);
                    pieces.insert(pieces.end(), more.begin(), more.end());
                }
                const auto heights = measured(pieces);
                REQUIRE(heights.size() == strip.marks.size());
                for (std::size_t i = 0; i < heights.size(); ++i) {
                    CHECK(near_abs(heights[i], Millimetres{strip.marks[i].at_mm}, true_to));
                }
                const Sheet sheet = support::sheet(paper);
                for (const Found& piece : pieces) {
                    CHECK(piece.top > sheet.margin_top);
                    CHECK(piece.foot < sheet.height - sheet.margin_bottom);
                }
                if (length < 240.0) {
                    CHECK(pieces.size() == 1);
                }
                if (length > 300.0) {
                    CHECK(pieces.size() >= 2);
                }
            }
        }
    }
}

TEST_CASE("the cuts of a strip leave nothing out, keep to the room and stay off the labelled marks") {
    for (double length = 40.0; length < 1200.0; length += 13.7) {
        for (const Millimetres room : {240.0_mm, 251.3_mm, 268.9_mm}) {
            CAPTURE(length);
            CAPTURE(room.value());
            const card::Strip strip = strip_of(length, 6.386);
            const auto cuts = stretches(strip, room);
            REQUIRE_FALSE(cuts.empty());
            CHECK(cuts.front().from == 0.0_mm);
            CHECK(cuts.front().first);
            CHECK(cuts.back().to == Millimetres{length});
            CHECK(cuts.back().last);
            const double least_pieces = std::ceil(Millimetres{length} / room);
            CHECK(static_cast<double>(cuts.size()) >= least_pieces);
            for (std::size_t i = 0; i < cuts.size(); ++i) {
                CHECK(cuts[i].to > cuts[i].from);
                CHECK(cuts[i].to - cuts[i].from + cuts[i].head <= room + 1e-9_mm);
                if (i > 0) {
                    CHECK(cuts[i].from == cuts[i - 1].to);
                    const bool off = std::all_of(strip.marks.begin(), strip.marks.end(), [&](const auto& mark) {
                        return mark.label.empty() || abs(Millimetres{mark.at_mm} - cuts[i].from) > 3.0_mm;
                    });
                    CHECK(off);
                }
            }
        }
    }
}

TEST_CASE("strips stand side by side while the sheet has room, and a sheet too narrow for one says so") {
    const auto pages = pages_of({card::SheetBlock{strip_of(200.0, 6.0)}, card::SheetBlock{strip_of(380.0, 6.0)},
                                 card::SheetBlock{strip_of(380.0, 6.0)}},
                                "a4");
    std::vector<std::size_t> counts;
    for (const Page& page : pages) {
        counts.push_back(pieces_on(page).size());
    }
    CHECK(counts == std::vector<std::size_t>{0, 4, 1});  // the name stands on the first
    Sheet narrow = support::sheet("a4");
    narrow.name = "narrow";
    narrow.width = 52.0_mm;
    card::Sheets sheets;
    sheets.name = "B";
    sheets.blocks = {card::SheetBlock{strip_of(200.0, 6.0)}};
    Format type = support::format("plain");
    type.margin = 5.0_mm;
    const auto made = lay_out_sheets(sheets, type, narrow, measure);
    CHECK_FALSE(made.ok());
    CHECK(support::has_code(made.problems(), "strip-too-wide"));
}

TEST_CASE("a figure that would reach to the levels beside it goes without its unit") {
    card::Strip strip = strip_of(200, 5);
    strip.marks.push_back({137.5, "10000.5\u00A0L", false});
    std::stable_sort(strip.marks.begin(), strip.marks.end(),
                     [](const auto& a, const auto& b) { return a.at_mm < b.at_mm; });
    std::string figures;
    for (const Page& page : pages_of({strip}, "a4")) {
        for (const auto& item : page.items) {
            if (const PlacedText* text = as_text(item)) {
                figures += text->text + "|";
            }
        }
    }
    CAPTURE(figures);
    CHECK(figures.find("L|10000.5|30|") != std::string::npos);  // its neighbours keep theirs
}

TEST_CASE("levels that crowd a strip are refused, not printed over each other") {
    card::Strip strip = strip_of(100.0, 5.0);
    for (int i = 0; i < 40; ++i) {
        strip.marks.push_back({50.0 + 0.1 * i, "another level of water", true});
    }
    card::Sheets sheets;
    sheets.name = "Basis";
    sheets.blocks = {card::SheetBlock{strip}};
    const auto made = lay_out_sheets(sheets, support::format("plain"), support::sheet("a4"), measure);
    CHECK_FALSE(made.ok());
    CHECK(support::has_code(made.problems(), "strip-crowded"));
}

TEST_CASE("the template is the paper and the border at true scale, and its seal is nowhere narrower than the border") {
    for (const char* name : {"hand", "pocket", "wallet", "large"}) {
        for (const char* paper : {"a4", "letter"}) {
            CAPTURE(std::string(name));
            CAPTURE(std::string(paper));
            const Format format = support::format(name);
            card::LaminateTemplate film{format.width.value(), format.height.value(), 5.0, 5.0, "Film for these cards."};
            const auto pages = pages_of({card::SheetBlock{film}}, paper);
            std::vector<PlacedPath> paths;
            for (const auto& item : pages.back().items) {
                if (const auto* path = std::get_if<PlacedPath>(&item)) {
                    paths.push_back(*path);
                }
            }
            REQUIRE(paths.size() == 2);
            const auto bounds = [](const PlacedPath& path) {
                Rect rect{1e9_mm, 1e9_mm, -1e9_mm, -1e9_mm};
                for (const auto& point : path.points) {
                    rect = {std::min(rect.x1, point.x), std::min(rect.y1, point.y), std::max(rect.x2, point.x),
                            std::max(rect.y2, point.y)};
                }
                return rect;
            };
            const Rect outer = bounds(paths[0]);
            const Rect inner = bounds(paths[1]);
            CHECK(near_abs(inner.x2 - inner.x1, format.width, true_to));
            CHECK(near_abs(inner.y2 - inner.y1, format.height, true_to));
            CHECK(near_abs(outer.x2 - outer.x1, format.width + 10.0_mm, true_to));
            CHECK(near_abs(outer.y2 - outer.y1, format.height + 10.0_mm, true_to));
            for (const auto& corner : paths[1].points) {
                for (const auto& edge : paths[0].points) {
                    CHECK(std::hypot((corner.x - edge.x).value(), (corner.y - edge.y).value()) > 5.0 - true_to);
                }
            }
        }
    }
}

TEST_CASE("a template wider than the sheet is turned, and one that fits neither way is refused") {
    card::LaminateTemplate film{230.0, 120.0, 5.0, 5.0, "Film."};
    const auto pages = pages_of({card::SheetBlock{film}}, "letter");
    bool upright = false;
    for (const auto& item : pages.back().items) {
        if (const auto* path = std::get_if<PlacedPath>(&item); path != nullptr && path->dash_mm.empty()) {
            const Rect rect = extent(*path);
            upright = rect.y2 - rect.y1 > rect.x2 - rect.x1;
        }
    }
    CHECK(upright);
    film.paper_height_mm = 300.0;
    card::Sheets sheets;
    sheets.name = "Basis";
    sheets.blocks = {card::SheetBlock{film}};
    const auto made = lay_out_sheets(sheets, support::format("plain"), support::sheet("letter"), measure);
    CHECK_FALSE(made.ok());
}
