// SPDX-License-Identifier: MIT
#include "layout/block/fragment.hpp"
#include "layout/layout.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <cstddef>

namespace holdwater::layout {

Page contact_sheet(const std::vector<CardFaces>& cards, int columns, Millimetres width) {
    constexpr double gap_share = 0.06;  // of a card's width
    constexpr Points outline_pt = 0.6_pt;
    std::vector<const Page*> faces;
    for (const auto& card : cards) {
        for (const auto& face : card.faces) {
            faces.push_back(&face);
        }
    }
    Page sheet;
    sheet.name = "overview";
    sheet.width = width;
    const int across = std::max(1, columns);
    if (faces.empty()) {
        sheet.height = width;
        return sheet;
    }
    // n cards and n + 1 gaps fill the width.
    const Millimetres card_width = width / (across + gap_share * (across + 1));
    const Millimetres gap = gap_share * card_width;
    const double factor = card_width / faces.front()->width;
    sheet.scale = factor;
    const Millimetres card_height = factor * faces.front()->height;
    const auto rows =
        static_cast<int>((faces.size() + static_cast<std::size_t>(across) - 1) / static_cast<std::size_t>(across));
    sheet.height = gap + rows * (card_height + gap);
    for (std::size_t i = 0; i < faces.size(); ++i) {
        const std::size_t rows_above = i / static_cast<std::size_t>(across);
        const auto column = static_cast<double>(i % static_cast<std::size_t>(across));
        const auto row = static_cast<double>(rows_above);
        const Millimetres x = gap + column * (card_width + gap);
        const Millimetres y = gap + row * (card_height + gap);
        put_page(sheet, *faces[i], x, y, factor);
        sheet.items.emplace_back(frame(x, y, card_width, card_height, outline_pt));
    }
    return sheet;
}

}  // namespace holdwater::layout
