// SPDX-License-Identifier: MIT
// A grid to write in with a grease pencil and a gloved hand.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <numeric>
#include <vector>

namespace holdwater::layout {

Fragment write_in(const card::WriteIn& block, const BlockContext& setting) {
    constexpr Millimetres least_row = 7.0_mm;  // mm: what a grease pencil needs
    constexpr Millimetres roomy_row = 11.0_mm;
    const Millimetres row = setting.between(least_row, roomy_row);
    const TextStyle head = body_style(setting);
    const TextStyle printed = [&] {
        TextStyle style = body_style(setting);
        style.face = Weight::bold;
        return style;
    }();
    const Millimetres pad = setting.scaled(1.2_mm);
    const std::size_t columns = std::max<std::size_t>(1, block.heads.size());

    // The first column takes one line of each text where it can, half of the width at most unless a single word wants
    // more; a column to write in is never narrower than its head, and what is left over is shared evenly.
    Millimetres first;
    Millimetres longest_word;
    for (const auto& text : block.first_column) {
        first = std::max(first, one_line(text, printed, setting.measure).width);
        longest_word = std::max(longest_word, widest_word(text, printed, setting.measure));
    }
    std::vector<Millimetres> widths;
    for (const auto& text : block.heads) {
        widths.push_back(widest_word(text, head, setting.measure) + 2.0 * pad);
    }
    widths.resize(columns);
    longest_word = std::max(longest_word + 2.0 * pad, widths[0]);
    const Millimetres heads_width = std::accumulate(widths.begin() + 1, widths.end(), Millimetres{});
    first = std::max(first + 2.0 * pad, longest_word);
    first = std::min({first, columns == 1 ? setting.width : std::max(0.5 * setting.width, longest_word),
                      setting.width - heads_width});
    const Millimetres spare =
        columns == 1 ? 0.0_mm : (setting.width - first - heads_width) / static_cast<double>(columns - 1);
    widths[0] = first;
    std::vector<Millimetres> lefts(columns);
    for (std::size_t c = 1; c < columns; ++c) {
        widths[c] += spare;
        lefts[c] = lefts[c - 1] + widths[c - 1];
    }
    const auto left_of = [&](std::size_t c) { return lefts[c]; };
    const auto width_of = [&](std::size_t c) { return widths[c]; };

    Fragment made;
    made.group.tag = Tag::table;
    made.group.headed = !block.heads.empty();
    std::vector<Fragment> heads;
    Millimetres head_height;
    for (std::size_t c = 0; c < block.heads.size(); ++c) {
        heads.push_back(paragraph(block.heads[c], head, width_of(c) - 2.0 * pad, setting.measure));
        head_height = std::max(head_height, heads.back().height);
    }
    for (std::size_t c = 0; c < heads.size(); ++c) {
        const std::size_t first_item = made.items.size();
        put(made, heads[c], left_of(c) + pad, head_height - heads[c].height);
        set_cell(made.items, first_item, c);
    }
    set_row(made.items, 0, 0);
    const Millimetres top = heads.empty() ? 0.0_mm : head_height + setting.scaled(0.8_mm);
    Millimetres y = top;
    std::size_t row_number = heads.empty() ? 0 : 1;
    for (const auto& text : block.first_column) {
        Fragment words = paragraph(text, printed, first - 2.0 * pad, setting.measure);
        const Millimetres height = std::max(row, words.height + 2.0 * pad);
        const std::size_t first_item = made.items.size();
        put(made, words, pad, y + 0.5 * (height - words.height));
        set_cell(made.items, first_item, 0);
        set_row(made.items, first_item, row_number++);
        y += height;
        made.items.emplace_back(line(0.0_mm, y, setting.width, y, hair_pt));
    }
    for (std::size_t c = 1; c < columns; ++c) {
        made.items.emplace_back(line(left_of(c), top, left_of(c), y, c == 1 ? rule_pt : hair_pt));
    }
    made.items.emplace_back(frame(0.0_mm, top, setting.width, y - top, rule_pt));
    made.height = y;
    return made;
}

}  // namespace holdwater::layout
