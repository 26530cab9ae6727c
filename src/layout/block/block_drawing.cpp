// SPDX-License-Identifier: MIT
// Line drawings side by side, each over its label; a single one has its label beside it where there is room.
#include "layout/block/blocks.hpp"
#include "layout/drawing/drawing.hpp"
#include "layout/reading.hpp"

#include <algorithm>

namespace holdwater::layout {

Fragment drawings(const card::Drawings& block, const BlockContext& setting) {
    Fragment made;
    made.group.tag = Tag::figure;
    made.group.alt = described(block);
    if (block.shown.empty()) {
        return made;
    }
    std::vector<PlacedDrawing> drawn;
    Millimetres height;
    Millimetres widths;
    for (const auto& one : block.shown) {
        const PlacedDrawing& own = drawing_named(one.name);
        drawn.push_back(block.height_mm > 0.0 ? drawing_of_height(own, setting.scaled(Millimetres{block.height_mm}))
                                              : own);
        height = std::max(height, drawn.back().height);
        widths += drawn.back().width;
    }
    const Millimetres gap = setting.scaled(3.0_mm);
    const auto count = static_cast<double>(drawn.size());
    const Millimetres spare = setting.width - widths - gap * (count - 1.0);
    made.too_wide = std::max(0.0_mm, -spare);
    made.height = height;

    constexpr Millimetres two_words = 24.0_mm;
    const TextStyle style = body_style(setting);
    const Millimetres beside = spare - gap;
    if (drawn.size() == 1 && beside >= setting.scaled(two_words)) {
        made.items.emplace_back(drawn[0]);
        const Fragment label = paragraph(block.shown[0].label, style, beside, setting.measure);
        made.height = std::max(height, label.height);
        put(made, label, drawn[0].width + gap, std::max(0.0_mm, 0.5 * (height - label.height)));
        return made;
    }
    const Millimetres share = std::max(0.0_mm, spare) / count;
    Millimetres x;
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        const Millimetres cell = drawn[i].width + share;
        // They stand on one line, each flush with its label.
        made.items.push_back(moved(drawn[i], x, height - drawn[i].height));
        if (!block.shown[i].label.empty()) {
            const Millimetres top = height + setting.scaled(1.2_mm);
            const Fragment label = paragraph(block.shown[i].label, style, cell, setting.measure);
            put(made, label, x, top);
            made.height = std::max(made.height, top + label.height);
        }
        x += cell + gap;
    }
    return made;
}

}  // namespace holdwater::layout
