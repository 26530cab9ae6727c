// SPDX-License-Identifier: MIT
// Bars over a scale of temperature: what may be, and the marks that one would like to know it by.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>

namespace holdwater::layout {

Fragment bands(const card::Bands& block, const BlockContext& setting) {
    const TextStyle words = body_style(setting);
    TextStyle figures = figure_style(setting);
    figures.role = Role::paragraph;
    figures.quiet_units = false;
    Millimetres label;
    for (const card::Text* head : {&block.head, &block.scale_head, &block.below_head}) {
        label = std::max(label, one_line(*head, words, setting.measure).width);
    }
    for (const auto& bar : block.bars) {
        label = std::max(label, one_line(bar.label, words, setting.measure).width);
    }
    const Millimetres left = label + setting.scaled(2.5_mm);
    const Millimetres plot = setting.width - left;
    const auto x_of = [&](double at) { return left + (at - block.from) / (block.to - block.from) * plot; };

    Fragment made;
    made.group = {Tag::figure, false, described(block)};
    // Marks with their labels above, each on a line of its own, so that none touch.
    const Millimetres row = leading(words.size_pt) + 0.2_mm;
    const Millimetres bar_high = setting.between(setting.scaled(5.0_mm), setting.scaled(8.0_mm));
    const Millimetres bar_gap = setting.between(setting.scaled(1.4_mm), setting.scaled(3.0_mm));
    // The head shares the row of the hottest mark where that leaves it room.
    const TextLine head = one_line(block.head, words, setting.measure);
    const auto label_from = [&](const card::Bands::Mark& mark) {
        return std::max(0.0_mm,
                        x_of(mark.at) - one_line(mark.label, words, setting.measure).width - setting.scaled(1.0_mm));
    };
    const bool own_row = block.marks.empty() || label_from(block.marks.back()) < head.width + setting.scaled(2.0_mm);
    const Millimetres top = row * static_cast<double>(block.marks.size() + (own_row ? 1 : 0)) + setting.scaled(0.6_mm);
    const Millimetres bottom =
        top + (bar_high + bar_gap) * static_cast<double>(block.bars.size()) + setting.scaled(0.6_mm);
    for (std::size_t i = 0; i < block.marks.size(); ++i) {
        const TextLine text = one_line(block.marks[i].label, words, setting.measure);
        const Millimetres x = x_of(block.marks[i].at);
        // The hottest mark highest; the words end at their line, which runs down from them.
        const Millimetres y = row * static_cast<double>(block.marks.size() - 1 - i);
        place(made.items, text, label_from(block.marks[i]), y + ascent(words.size_pt), words);
        made.items.emplace_back(line(x, y, x, bottom, heavy_pt));
    }
    Millimetres y = top;
    place(made.items, head, 0.0_mm, (own_row ? top - row : 0.0_mm) + ascent(words.size_pt), words);
    for (const auto& bar : block.bars) {
        const Millimetres from = x_of(std::clamp(bar.low, block.from, block.to));
        const Millimetres to = x_of(std::clamp(bar.high, block.from, block.to));
        place(made.items, one_line(bar.label, words, setting.measure), 0.0_mm,
              y + bar_gap + 0.5 * (bar_high + cap_height(words.size_pt)), words);
        made.items.emplace_back(frame(from, y + bar_gap, to - from, bar_high, heavy_pt));
        const TextLine span = one_line(bar.span, figures, setting.measure);
        const Millimetres pad = setting.scaled(0.8_mm);
        // On a white plate, since marks run through the bars.
        const Millimetres x = std::clamp(0.5 * (from + to - span.width), left + pad, setting.width - span.width - pad);
        const Millimetres baseline = y + bar_gap + 0.5 * (bar_high + cap_height(figures.size_pt));
        const Millimetres up = ascent(figures.size_pt) + 0.2_mm;
        made.items.emplace_back(
            filled_box(x - pad, baseline - up, span.width + 2.0 * pad, up + descent(figures.size_pt) + 0.2_mm, 1.0));
        place(made.items, span, x, baseline, figures);
        y += bar_high + bar_gap;
    }
    if (block.scale.empty()) {
        made.height = bottom;
        return made;
    }
    made.items.emplace_back(line(left, bottom, setting.width, bottom, rule_pt));
    Millimetres baseline = bottom + setting.scaled(1.6_mm) + ascent(words.size_pt);
    const auto add_labels = [&](const card::Text& row_head, const std::vector<card::Bands::Mark>& labels) {
        place(made.items, one_line(row_head, words, setting.measure), 0.0_mm, baseline, words);
        for (const auto& mark : labels) {
            const TextLine text = one_line(mark.label, words, setting.measure);
            place(made.items, text, std::clamp(x_of(mark.at) - 0.5 * text.width, left, setting.width - text.width),
                  baseline, words);
        }
        made.height = baseline + descent(words.size_pt);
        baseline += leading(words.size_pt);
    };
    for (const auto& tick : block.scale) {
        const Millimetres half = 0.5 * em(rule_pt);
        const Millimetres x = std::clamp(x_of(tick.at), left + half, setting.width - half);
        made.items.emplace_back(line(x, bottom, x, bottom + setting.scaled(1.2_mm), rule_pt));
    }
    add_labels(block.scale_head, block.scale);
    if (!block.below.empty()) {
        add_labels(block.below_head, block.below);
    }
    return made;
}

}  // namespace holdwater::layout
