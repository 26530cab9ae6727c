// SPDX-License-Identifier: MIT
// The ladder: readings stand on its rungs, what to do stands beside them, the floor is a solid bar.
#include "layout/block/blocks.hpp"
#include "layout/block/marks.hpp"
#include "layout/reading.hpp"
#include "layout/text/figures.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

/// The figures that one acts on stand larger here than in a table: there are few of them.
TextStyle rung_style(const BlockContext& setting) {
    TextStyle style = figure_style(setting);
    style.size_pt = setting.between(1.0, 1.35) * setting.format.figure_pt;
    style.unit_pt = std::max(quiet_unit * style.size_pt, setting.format.body_pt);
    return style;
}

}  // namespace

Fragment ladder(const card::Ladder& block, const BlockContext& setting) {
    const Measure& measure = setting.measure;
    const TextStyle style = rung_style(setting);
    TextStyle head = body_style(setting);
    head.role = Role::table;
    const Millimetres row =
        lines_height(1, style.size_pt) + setting.between(setting.scaled(0.8_mm), setting.scaled(5.0_mm));
    const Millimetres rail = em(2.0 * heavy_pt);
    const Millimetres stub = setting.scaled(3.4_mm);  // of a rung, on each side of its reading
    const Millimetres air = setting.scaled(1.4_mm);

    // The left part: rail, stub, reading, stub, rail.
    FigureColumn readings;
    for (const auto& rung : block.rungs) {
        readings.take(figure_of(rung.reading, style, measure));
    }
    const Millimetres inside = 2.0 * (stub + air) + readings.width();
    const Millimetres head_least = widest_word(block.left_head, head, measure);
    const Millimetres left = std::max(inside + 2.0 * rail, head_least);
    const Millimetres gap = setting.scaled(4.0_mm);

    const std::size_t columns = block.right_heads.size();
    const Millimetres room = setting.width - left - gap;
    const Millimetres column = columns == 0 ? room : room / static_cast<double>(columns);
    const Millimetres pad = setting.scaled(2.0_mm);

    Fragment made;
    made.group.tag = Tag::table;
    made.group.headed = true;
    // Heads, standing on the top of the ladder.
    std::vector<Fragment> heads{paragraph(block.left_head, head, left, measure)};
    for (const auto& text : block.right_heads) {
        TextStyle strong = head;
        strong.face = Weight::bold;
        strong.quiet_units = false;
        if (text.find_first_of("0123456789") != std::string::npos) {
            strong.size_pt = setting.format.figure_pt;  // a column is chosen by it: read as well as its figures
        }
        heads.push_back(paragraph(text, strong, column - pad, measure));
    }
    Millimetres head_height;
    for (const auto& one : heads) {
        head_height = std::max(head_height, one.height);
    }
    for (std::size_t c = 0; c < heads.size(); ++c) {
        const Millimetres x = c == 0 ? 0.0_mm : left + gap + column * static_cast<double>(c - 1);
        const std::size_t first = made.items.size();
        put(made, heads[c], x, head_height - heads[c].height);
        set_cell(made.items, first, c);
    }
    set_row(made.items, 0, 0);
    const Millimetres top = head_height + setting.scaled(1.0_mm);

    std::vector<FigureColumn> amounts(columns);
    for (const auto& rung : block.rungs) {
        for (std::size_t c = 0; c < columns && c < rung.amounts.size(); ++c) {
            amounts[c].take(figure_of(rung.amounts[c], style, measure));
            made.too_wide = std::max(made.too_wide, amounts[c].width() - (column - pad));
        }
    }

    Millimetres y = top;
    const Millimetres x0 = rail;  // inner edges of the rails
    const Millimetres x1 = left - rail;
    for (std::size_t r = 0; r < block.rungs.size(); ++r) {
        const Millimetres middle = y + 0.5 * row;
        const Millimetres baseline = middle + 0.5 * cap_height(style.size_pt);
        const Figure reading = figure_of(block.rungs[r].reading, style, measure);
        const std::size_t first = made.items.size();
        place_figure(made.items, reading, readings, x0, x1 - x0, card::Align::centre, baseline, style);
        set_cell(made.items, first, 0);
        const Millimetres half = 0.5 * readings.width() + air;
        const Millimetres centre = 0.5 * (x0 + x1);
        made.items.emplace_back(line(x0, middle, centre - half, middle, heavy_pt));
        made.items.emplace_back(line(centre + half, middle, x1, middle, heavy_pt));
        for (std::size_t c = 0; c < columns && c < block.rungs[r].amounts.size(); ++c) {
            const Millimetres x = left + gap + column * static_cast<double>(c);
            const std::size_t first_amount = made.items.size();
            place_figure(made.items, figure_of(block.rungs[r].amounts[c], style, measure), amounts[c], x, column - pad,
                         card::Align::left, baseline, style);
            set_cell(made.items, first_amount, c + 1);
        }
        set_row(made.items, first, r + 1);
        y += row;
        if (r + 1 < block.rungs.size()) {
            // A little low: letters hang below the line, none stands above the capitals.
            const Millimetres between = y + 0.06 * em(style.size_pt);
            made.items.emplace_back(line(left + gap, between, setting.width, between, hair_pt));
        }
    }

    // The floor: below it there is nothing to add, only something to do.
    TextStyle floor_style = style;
    floor_style.grey = 1.0;
    floor_style.quiet_units = false;
    // On one line where that can be had without falling below the table figures.
    const auto action_start = [&] {
        return std::max(left + gap,
                        pad + one_line(block.floor_reading, floor_style, measure).width + setting.scaled(7.0_mm));
    };
    while (floor_style.size_pt > setting.format.figure_pt &&
           action_start() + one_line(block.floor_action, floor_style, measure).width > setting.width - pad) {
        floor_style.size_pt = std::max(setting.format.figure_pt, floor_style.size_pt - 0.25_pt);
    }
    const TextLine reading = one_line(block.floor_reading, floor_style, measure);
    const Millimetres action_x = action_start();
    const auto action = break_lines(block.floor_action, floor_style, setting.width - action_x - pad, measure);
    const Millimetres bar = std::max(row, lines_height(action.size(), floor_style.size_pt) + setting.scaled(2.6_mm));
    made.items.emplace_back(filled_box(0.0_mm, y, setting.width, bar));
    const Millimetres middle = y + 0.5 * bar;
    const std::size_t floor = made.items.size();
    place(made.items, reading, pad, middle + 0.5 * cap_height(floor_style.size_pt), floor_style);
    set_cell(made.items, floor, 0);
    const std::size_t floor_words = made.items.size();
    Millimetres baseline =
        middle + 0.5 * cap_height(floor_style.size_pt) -
        0.5 * leading(floor_style.size_pt) * static_cast<double>(action.empty() ? 0 : action.size() - 1);
    for (const auto& one : action) {
        place(made.items, one, action_x, baseline, floor_style);
        made.too_wide = std::max(made.too_wide, one.width - (setting.width - action_x - pad) - 1e-6_mm);
        baseline += leading(floor_style.size_pt);
    }
    set_cell(made.items, floor_words, 1);
    set_row(made.items, floor, block.rungs.size() + 1);
    const Millimetres arrow = 0.8 * cap_height(floor_style.size_pt);
    place_arrow(made.items, action_x - 1.6 * arrow, middle - 0.5 * arrow, arrow, 1.0);

    // Rails stand on the floor and end a little above the first rung.
    made.items.emplace_back(filled_box(0.0_mm, top, rail, y - top));
    made.items.emplace_back(filled_box(left - rail, top, rail, y - top));
    made.height = y + bar;
    return made;
}

}  // namespace holdwater::layout
