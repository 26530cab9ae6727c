// SPDX-License-Identifier: MIT
// Tables: column widths from their content, figures in line, light rules, a heavy frame round this trip's row.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"
#include "layout/text/table_columns.hpp"

#include <algorithm>
#include <optional>

namespace holdwater::layout {

namespace {

class TablePlan {
  public:
    TablePlan(const card::Table& block, const BlockContext& setting)
        : block_(block), setting_(setting), columns_(block, setting), plans_(columns_.plans()) {}

    Fragment draw() const;

  private:
    Fragment draw_row(const std::vector<card::Text>& row) const;
    Fragment draw_heads() const;

    const card::Table& block_;
    const BlockContext& setting_;
    TableColumns columns_;
    const std::vector<ColumnPlan>& plans_;
};

Fragment TablePlan::draw_heads() const {
    Fragment made;
    std::vector<std::vector<TextLine>> heads;
    Millimetres height;
    const TextStyle style = table_head_style(block_, setting_);
    for (std::size_t c = 0; c < plans_.size(); ++c) {
        heads.push_back(break_lines(block_.columns[c].head, style, plans_[c].width, setting_.measure));
        height = std::max(height, lines_height(heads.back().size(), style.size_pt));
    }
    for (std::size_t c = 0; c < plans_.size(); ++c) {
        const std::size_t first = made.items.size();
        const auto align = block_.columns[c].align;
        Millimetres baseline = height - descent(style.size_pt) -
                               static_cast<double>(heads[c].empty() ? 0 : heads[c].size() - 1) * leading(style.size_pt);
        for (const auto& one : heads[c]) {
            const Millimetres spare = plans_[c].width - one.width;
            place(made.items, one,
                  plans_[c].x + (align == card::Align::right    ? spare
                                 : align == card::Align::centre ? 0.5 * spare
                                                                : 0.0_mm),
                  baseline, style);
            baseline += leading(style.size_pt);
        }
        set_cell(made.items, first, c);
    }
    made.height = height;
    return made;
}

Fragment TablePlan::draw_row(const std::vector<card::Text>& row) const {
    Fragment made;
    const Points figure_pt = setting_.format.figure_pt;
    const Millimetres baseline = ascent(figure_pt);
    made.height = lines_height(1, figure_pt);
    for (std::size_t c = 0; c < plans_.size() && c < row.size(); ++c) {
        const card::Column& column = block_.columns[c];
        const ColumnPlan& plan = plans_[c];
        const TextStyle& style = plan.style;
        const std::size_t first = made.items.size();
        if (keeps_figures(column)) {
            place_figure(made.items, figure_of(row[c], style, setting_.measure), plan.figures, plan.x, plan.width,
                         column.align, baseline, style);
            set_cell(made.items, first, c);
            continue;
        }
        const auto lines = break_lines(row[c], style, plan.width, setting_.measure);
        Millimetres y = baseline;
        for (const auto& one : lines) {
            place(made.items, one, plan.x, y, style);
            y += leading(style.size_pt);
        }
        set_cell(made.items, first, c);
        made.height =
            std::max(made.height, baseline - ascent(style.size_pt) + lines_height(lines.size(), style.size_pt));
    }
    return made;
}

Fragment TablePlan::draw() const {
    Fragment made;
    made.group.tag = Tag::table;
    const Millimetres width = setting_.width;
    if (!block_.title.empty()) {
        TextStyle style = body_style(setting_);
        style.size_pt = setting_.format.figure_pt;
        style.face = Weight::bold;
        style.quiet_units = false;
        const Fragment title = paragraph(block_.title, style, width, setting_.measure);
        put(made, title, 0.0_mm, 0.0_mm);
        made.height = title.height + setting_.scaled(1.6_mm);
    }
    const bool has_heads =
        std::any_of(block_.columns.begin(), block_.columns.end(), [](const auto& c) { return !c.head.empty(); });
    made.group.headed = has_heads;
    if (has_heads) {
        const Fragment heads = draw_heads();
        const std::size_t first = made.items.size();
        put(made, heads, 0.0_mm, made.height);
        set_row(made.items, first, 0);
        made.height += heads.height + setting_.scaled(0.7_mm);
    }
    made.items.emplace_back(line(0.0_mm, made.height, width, made.height, has_heads ? 1.5 * rule_pt : rule_pt));
    const Millimetres air = setting_.between(setting_.scaled(1.0_mm), setting_.scaled(2.5_mm));
    std::optional<std::pair<Millimetres, Millimetres>> marked;
    for (std::size_t r = 0; r < block_.rows.size(); ++r) {
        const Millimetres top = made.height;
        const Fragment row = draw_row(block_.rows[r]);
        // Capitals have no descender to balance: a little more above than below centres them between the rules.
        const std::size_t first = made.items.size();
        put(made, row, 0.0_mm, top + air);
        set_row(made.items, first, r + (has_heads ? 1 : 0));
        made.height = top + row.height + 1.7 * air;
        if (block_.marked_row == r) {
            marked = {top, made.height};
        }
        const bool last = r + 1 == block_.rows.size();
        made.items.emplace_back(line(0.0_mm, made.height, width, made.height, last ? rule_pt : hair_pt));
    }
    if (marked) {
        // Round the rules above and below the row.
        const Millimetres half = 0.5 * em(1.25 * heavy_pt);
        made.items.emplace_back(
            frame(0.0_mm, marked->first - half, width, marked->second - marked->first + 2.0 * half, 1.25 * heavy_pt));
    }
    made.too_wide = std::max(made.too_wide, columns_.too_wide());
    made.squeezed = columns_.squeezed();
    return made;
}

}  // namespace

Fragment table(const card::Table& block, const BlockContext& setting) {
    return TablePlan(block, setting).draw();
}

}  // namespace holdwater::layout
