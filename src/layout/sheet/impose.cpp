// SPDX-License-Identifier: MIT
// Cards onto sheets: as many up as the printer's margins leave, backs mirrored for a turn about the long edge.
#include "layout/block/fragment.hpp"
#include "layout/layout.hpp"
#include "layout/reading.hpp"
#include "layout/sheet/sheet_head.hpp"
#include "layout/style.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace holdwater::layout {

namespace {

constexpr Millimetres mark_offset = 2.0_mm;  // from the corner of the outermost cards
constexpr Millimetres mark_least = 2.0_mm;
constexpr Millimetres mark_most = 5.0_mm;
constexpr Millimetres cross_arm = 1.5_mm;  // where four cards meet
constexpr Points mark_pt = 0.5_pt;

/// One card of paper: a face and, perhaps, its back.
struct Leaf {
    const Page* front = nullptr;
    const Page* back = nullptr;
};

struct Grid {
    int columns = 0;
    int rows = 0;
    Millimetres cell_width;
    Millimetres cell_height;
    Millimetres left;
    Millimetres top;
    Millimetres mark;  // length of the outer marks
    std::size_t cells() const { return static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows); }
    Millimetres x(int column) const { return left + column * cell_width; }
    Millimetres y(int row) const { return top + row * cell_height; }
};

Grid grid_for(const Sheet& sheet, Millimetres cell_width, Millimetres cell_height) {
    Grid grid;
    grid.cell_width = cell_width;
    grid.cell_height = cell_height;
    const Millimetres around = mark_offset + mark_least;
    const Millimetres top = sheet.margin_top + sheet_head_height;
    const Millimetres width = sheet.width - 2.0 * sheet.margin_sides;
    const Millimetres height = sheet.height - sheet.margin_bottom - top;
    grid.columns = std::max(0, static_cast<int>(std::floor((width - 2.0 * around) / cell_width)));
    grid.rows = std::max(0, static_cast<int>(std::floor((height - 2.0 * around) / cell_height)));
    const Millimetres spare_x = width - grid.columns * cell_width;
    const Millimetres spare_y = height - grid.rows * cell_height;
    // Centred on the sheet itself, so that a mirrored back lies on its front.
    grid.left = 0.5 * (sheet.width - grid.columns * cell_width);
    grid.top = top + 0.5 * spare_y;
    grid.mark = std::min({mark_most, 0.5 * spare_x - mark_offset, 0.5 * spare_y - mark_offset});
    return grid;
}

std::vector<Leaf> leaves_of(const std::vector<CardFaces>& cards, Sides sides, int copies) {
    std::vector<Leaf> leaves;
    for (int copy = 0; copy < copies; ++copy) {
        for (const auto& card : cards) {
            const std::size_t step = sides == Sides::single ? 1 : 2;
            for (std::size_t i = 0; i < card.faces.size(); i += step) {
                const bool has_back = step == 2 && i + 1 < card.faces.size();
                leaves.push_back({&card.faces[i], has_back ? &card.faces[i + 1] : nullptr});
            }
        }
    }
    return leaves;
}

PlacedLine cut_line(Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2) {
    PlacedLine made = line(x1, y1, x2, y2, mark_pt);
    made.role = Role::cut_mark;
    return made;
}

void place_cut_marks(Page& page, const Grid& grid) {
    const Millimetres near = mark_offset;
    const Millimetres far = mark_offset + grid.mark;
    const Millimetres right = grid.x(grid.columns);
    const Millimetres bottom = grid.y(grid.rows);
    for (int c = 0; c <= grid.columns; ++c) {
        page.items.emplace_back(cut_line(grid.x(c), grid.top - far, grid.x(c), grid.top - near));
        page.items.emplace_back(cut_line(grid.x(c), bottom + near, grid.x(c), bottom + far));
    }
    for (int r = 0; r <= grid.rows; ++r) {
        page.items.emplace_back(cut_line(grid.left - far, grid.y(r), grid.left - near, grid.y(r)));
        page.items.emplace_back(cut_line(right + near, grid.y(r), right + far, grid.y(r)));
    }
    for (int c = 0; c <= grid.columns; ++c) {
        for (int r = 0; r <= grid.rows; ++r) {
            const bool edge_x = c == 0 || c == grid.columns;
            const bool edge_y = r == 0 || r == grid.rows;
            if (edge_x && edge_y) {
                continue;  // the outer marks show it
            }
            const Millimetres x = grid.x(c);
            const Millimetres y = grid.y(r);
            if (!edge_y) {
                page.items.emplace_back(
                    cut_line(std::max(grid.left, x - cross_arm), y, std::min(right, x + cross_arm), y));
            }
            if (!edge_x) {
                page.items.emplace_back(
                    cut_line(x, std::max(grid.top, y - cross_arm), x, std::min(bottom, y + cross_arm)));
            }
        }
    }
}

/// Short dashes outside the cards, in line with the folds.
void place_fold_marks(Page& page, const Grid& grid, bool upright) {
    const auto dashed = [&](Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2) {
        PlacedLine mark = cut_line(x1, y1, x2, y2);
        mark.dash_mm = {0.8_mm, 0.6_mm};
        page.items.emplace_back(mark);
    };
    const Millimetres near = 0.3_mm;
    const Millimetres far = mark_offset + grid.mark;
    for (int c = 0; upright && c < grid.columns; ++c) {
        const Millimetres x = grid.x(c) + 0.5 * grid.cell_width;
        dashed(x, grid.top - far, x, grid.top - near);
        dashed(x, grid.y(grid.rows) + near, x, grid.y(grid.rows) + far);
    }
    for (int r = 0; !upright && r < grid.rows; ++r) {
        const Millimetres y = grid.y(r) + 0.5 * grid.cell_height;
        dashed(grid.left - far, y, grid.left - near, y);
        dashed(grid.x(grid.columns) + near, y, grid.x(grid.columns) + far, y);
    }
}

void place_leaf_side(Page& page, const Page* side, Millimetres x, Millimetres y) {
    if (side != nullptr) {
        put_page(page, *side, x, y);
    }
}

/// A back printed on the other side of the paper may lie off its front by so much: its ticks start that far from the
/// cuts, so that none is cut short and none shows on its neighbour. All else keeps the format's margin anyway.
Page kept_off_the_cuts(Page back) {
    constexpr Millimetres registration = 2.0_mm;  // mm, as facts duplex.shift
    const Overloaded keep_off{[&](PlacedLine& rule) {
                                  if (rule.role != Role::ruler_tick) {
                                      return;
                                  }
                                  for (Millimetres* x : {&rule.x1, &rule.x2}) {
                                      *x = std::clamp(*x, registration, back.width - registration);
                                  }
                                  for (Millimetres* y : {&rule.y1, &rule.y2}) {
                                      *y = std::clamp(*y, registration, back.height - registration);
                                  }
                              },
                              [](PlacedText&) {}, [](PlacedBox&) {}, [](PlacedPath&) {}, [](PlacedDrawing&) {}};
    for (auto& item : back.items) {
        std::visit(keep_off, item);
    }
    return back;
}

}  // namespace

problem::Result<std::vector<Page>> impose(const std::vector<CardFaces>& cards, const Format& format, const Sheet& sheet,
                                          Sides sides, int copies, const std::string& title, const Measure& measure,
                                          const Phrases& phrases) {
    const bool fold = sides == Sides::fold;
    const bool upright =
        format.height >= format.width;  // folded on the long edge: side by side, else one below the other
    const Grid grid =
        grid_for(sheet, format.width * (fold && upright ? 2.0 : 1.0), format.height * (fold && !upright ? 2.0 : 1.0));
    if (grid.columns < 1 || grid.rows < 1) {
        return problem::error(
            "sheet-too-small",
            fmt::format("the sheet {} ({:g} x {:g} mm) does not hold one card of the format {} ({:g} x {:g} "
                        "mm{}) within the printer's margins",
                        sheet.name, sheet.width.value(), sheet.height.value(), format.name, format.width.value(),
                        format.height.value(), fold ? ", face and back side by side" : ""),
            "take a smaller format or a larger sheet");
    }
    const auto leaves = leaves_of(cards, sides, std::max(1, copies));
    std::vector<Page> sheets;
    const auto new_page = [&](std::size_t number, const std::string& side) {
        Page page;
        page.width = sheet.width;
        page.height = sheet.height;
        page.name = phrases.sheet + " " + std::to_string(number) + (side.empty() ? "" : " " + side);
        place_sheet_head(page, sheet, title, measure, phrases);
        return page;
    };
    for (std::size_t first = 0; first < leaves.size(); first += grid.cells()) {
        const std::size_t number = first / grid.cells() + 1;
        Page front = new_page(number, sides == Sides::duplex ? phrases.front : "");
        Page back = new_page(number, phrases.back);
        for (std::size_t k = 0; k < grid.cells() && first + k < leaves.size(); ++k) {
            const Leaf& leaf = leaves[first + k];
            const int column = static_cast<int>(k) % grid.columns;
            const int row = static_cast<int>(k) / grid.columns;
            place_leaf_side(front, leaf.front, grid.x(column), grid.y(row));
            if (fold) {
                place_leaf_side(front, leaf.back, grid.x(column) + (upright ? format.width : 0.0_mm),
                                grid.y(row) + (upright ? 0.0_mm : format.height));
            } else if (leaf.back != nullptr) {
                const Page kept = kept_off_the_cuts(*leaf.back);
                place_leaf_side(back, &kept, grid.x(grid.columns - 1 - column), grid.y(row));
            }
        }
        place_cut_marks(front, grid);
        if (fold) {
            place_fold_marks(front, grid, upright);
        }
        sheets.push_back(std::move(front));
        if (sides == Sides::duplex) {
            sheets.push_back(std::move(back));
        }
    }
    return sheets;
}

}  // namespace holdwater::layout
