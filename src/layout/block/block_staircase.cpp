// SPDX-License-Identifier: MIT
// Thickness steps: a table by thickness, under each row a bar of true length. Nothing stands between two bars to be
// judged.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"
#include "layout/text/table_columns.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::layout {

namespace {

/// The table as it lies, its bars to the right from its left edge.
class Stairs {
  public:
    /// `along`: room for bars and words; a longer bar is not drawn.
    Stairs(card::Staircase block, const BlockContext& setting, Millimetres along)
        : block_(std::move(block)), setting_(setting) {
        setting_.width = along;
    }

    Fragment draw() const;
    /// 0 tight to 1 roomy.
    void set_ease(double ease) { setting_.ease = ease; }
    /// The thinnest piece that is not the trip's own goes: it is done in the time of the next. False: none is left.
    bool drop_row();

  private:
    void add_heads(Fragment& made, const TableColumns& columns) const;
    void add_row(Fragment& made, const TableColumns& columns, std::size_t row) const;
    void add_bar(Fragment& made, std::size_t row) const;
    void add_end(Fragment& made) const;
    bool drawn(double bar) const { return Millimetres{bar} <= setting_.width + 1e-6_mm; }

    card::Staircase block_;
    BlockContext setting_;
};

bool Stairs::drop_row() {
    card::Table& table = block_.table;
    std::size_t first = 0;
    while (first < table.rows.size() && (block_.bars[first] <= 0.0 || table.marked_row == first)) {
        ++first;
    }
    if (first + 1 >= table.rows.size()) {
        return false;
    }
    table.rows.erase(table.rows.begin() + static_cast<std::ptrdiff_t>(first));
    block_.bars.erase(block_.bars.begin() + static_cast<std::ptrdiff_t>(first));
    if (table.marked_row && *table.marked_row > first) {
        --*table.marked_row;
    }
    return true;
}

void Stairs::add_heads(Fragment& made, const TableColumns& columns) const {
    const TextStyle style = table_head_style(block_.table, setting_);
    bool any = false;
    for (std::size_t c = 0; c < block_.table.columns.size(); ++c) {
        const card::Column& column = block_.table.columns[c];
        const ColumnPlan& plan = columns.plans()[c];
        const TextLine text = one_line(column.head, style, setting_.measure);
        const Millimetres spare = column.align == card::Align::right ? plan.width - text.width : 0.0_mm;
        place(made.items, text, plan.x + spare, made.height + ascent(style.size_pt), style);
        any = any || !column.head.empty();
    }
    if (any) {
        made.height += lines_height(1, style.size_pt) + setting_.scaled(0.7_mm);
    }
    // Rows without a bar before the first that has one: the baths in the other system.
    for (std::size_t row = 0; row < block_.bars.size() && block_.bars[row] <= 0.0; ++row) {
        add_row(made, columns, row);
        made.height += setting_.scaled(0.6_mm);
    }
    made.items.emplace_back(line(0.0_mm, made.height, setting_.width, made.height, rule_pt));
    made.height += setting_.scaled(1.2_mm);
}

void Stairs::add_row(Fragment& made, const TableColumns& columns, std::size_t row) const {
    const auto& cells = block_.table.rows[row];
    const Points size = setting_.format.figure_pt;
    for (std::size_t c = 0; c < cells.size() && c < columns.plans().size(); ++c) {
        const ColumnPlan& plan = columns.plans()[c];
        const card::Align align = block_.table.columns[c].align;
        if (keeps_figures(block_.table.columns[c])) {
            place_figure(made.items, figure_of(cells[c], plan.style, setting_.measure), plan.figures, plan.x,
                         plan.width, align, made.height + ascent(size), plan.style);
        } else {
            place(made.items, one_line(cells[c], plan.style, setting_.measure), plan.x, made.height + ascent(size),
                  plan.style);
        }
    }
    made.height += ascent(size) + setting_.scaled(0.8_mm);
}

/// The trip's own is heavy; what is black says stop.
void Stairs::add_bar(Fragment& made, std::size_t row) const {
    if (drawn(block_.bars[row])) {
        const Millimetres length{block_.bars[row]};
        const Millimetres high = setting_.between(setting_.scaled(2.2_mm), setting_.scaled(4.0_mm));
        PlacedBox bar = frame(0.0_mm, made.height, length, high, block_.table.marked_row == row ? heavy_pt : rule_pt);
        bar.role = Role::ruler_tick;
        made.items.emplace_back(bar);
        made.height += high;
    }
    made.height += setting_.between(setting_.scaled(1.3_mm), setting_.scaled(3.2_mm));
}

/// Behind the last: whatever is longer than that.
void Stairs::add_end(Fragment& made) const {
    const bool all = std::all_of(block_.bars.begin(), block_.bars.end(), [this](double bar) { return drawn(bar); });
    TextStyle style = figure_style(setting_);
    style.face = Weight::bold;
    style.role = Role::paragraph;
    style.grey = 1.0;
    style.quiet_units = false;
    const Millimetres pad = setting_.scaled(1.4_mm);
    const Fragment words =
        paragraph(all ? block_.too_thick : block_.longer, style, setting_.width - 2.0 * pad, setting_.measure);
    const Millimetres high = words.height + 1.6 * pad;
    made.items.emplace_back(filled_box(0.0_mm, made.height, setting_.width, high));
    put(made, words, pad, made.height + 0.8 * pad);
    made.height += high;
}

Fragment Stairs::draw() const {
    Fragment made;
    if (!block_.title.empty()) {
        const Fragment title = paragraph(block_.title, body_style(setting_), setting_.width, setting_.measure);
        put(made, title, 0.0_mm, 0.0_mm);
        made.height = title.height + setting_.between(setting_.scaled(1.6_mm), setting_.scaled(3.0_mm));
    }
    const TableColumns columns(block_.table, setting_);
    add_heads(made, columns);
    for (std::size_t row = 0; row < block_.table.rows.size(); ++row) {
        if (block_.bars[row] > 0.0) {
            add_row(made, columns, row);
            add_bar(made, row);
        }
    }
    add_end(made);
    made.too_wide = std::max(made.too_wide, columns.too_wide());
    made.squeezed = columns.squeezed();
    return made;
}

/// Share of the card's height that such a block may take: head and foot of the face have the rest. Lying it has a face
/// with as many words below as there is room for.
constexpr double most_standing = 0.74;
constexpr double most_lying = 0.64;

/// As many rows as have room when they are set tight, then with as much air as there is.
Fragment fitted(Stairs stairs, Millimetres room, double ease) {
    stairs.set_ease(0.0);
    Fragment tight = stairs.draw();
    while (tight.height > room && stairs.drop_row()) {
        tight = stairs.draw();
    }
    for (; ease > 0.01; ease -= 0.1) {
        stairs.set_ease(ease);
        Fragment made = stairs.draw();
        if (made.height <= room) {
            return made;
        }
    }
    return tight;
}

}  // namespace

Fragment staircase(const card::Staircase& block, const BlockContext& setting) {
    const Millimetres high = most_standing * setting.format.height;
    const bool long_bars =
        std::any_of(block.bars.begin(), block.bars.end(), [&](double bar) { return Millimetres{bar} > setting.width; });
    Fragment made;
    if (block.may_turn && long_bars && high > setting.width) {
        // Along the longer side of the card, a quarter turn.
        Fragment lying = fitted(Stairs(block, setting, high), setting.width, 1.0);
        for (Item& item : lying.items) {
            made.items.push_back(turned(std::move(item), high));
        }
        made.height = high;
        made.too_wide = std::max(lying.too_wide, lying.height - setting.width - 1e-6_mm);
        made.squeezed = lying.squeezed;
    } else {
        made = fitted(Stairs(block, setting, setting.width), most_lying * setting.format.height, setting.ease);
    }
    made.group = {Tag::figure, false, described(block)};
    return made;
}

}  // namespace holdwater::layout
