// SPDX-License-Identifier: MIT
#include "layout/sheet/sheet_blocks.hpp"

#include "layout/block/split.hpp"
#include "layout/sheet/laminate_template.hpp"
#include "layout/sheet/nomogram.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr Millimetres gap_blocks = 3.2_mm;
constexpr Millimetres gap_heading = 7.0_mm;
constexpr Millimetres gap_table = 4.5_mm;  // a titled table, to be kept apart from what stands above it
constexpr Millimetres below_heading = 2.2_mm;
constexpr Millimetres longest_line = 158.0_mm;  // mm: longer lines of running text lose the eye
constexpr double ease = 0.3;

const card::Block* plain_block(const SheetPiece& piece) {
    return std::get_if<card::Block>(&piece.block);
}

Millimetres gap_above(const SheetPiece& piece, bool after_heading) {
    return after_heading              ? below_heading
           : is<card::Heading>(piece) ? gap_heading
           : is<card::Table>(piece)   ? gap_table
                                      : gap_blocks;
}

}  // namespace

const char* block_name(const SheetPiece& piece) {
    const card::Block* block = plain_block(piece);
    return block != nullptr                                              ? block_name(*block)
           : std::holds_alternative<card::LaminateTemplate>(piece.block) ? "film template"
           : std::holds_alternative<card::Nomogram>(piece.block)         ? "nomogram"
                                                                         : "strip";
}

std::size_t rows_of(const SheetPiece& piece) {
    const card::Block* block = plain_block(piece);
    return block != nullptr ? rows_of(*block) : 0;
}

std::pair<SheetPiece, SheetPiece> split_after(const SheetPiece& piece, std::size_t rows, const Phrases& phrases) {
    auto [first, second] = split_after(Piece{*plain_block(piece), piece.first_number}, rows);
    if (auto* rest = std::get_if<card::Table>(&second.block); rest != nullptr && !rest->title.empty()) {
        const std::string mark = " · " + phrases.continued;
        rest->title += rest->title.ends_with(mark) ? "" : mark;
    }
    return {{std::move(first.block), first.first_number}, {std::move(second.block), second.first_number}};
}

SheetSetter::SheetSetter(const Format& type, const Sheet& sheet, const Measure& measure, const Phrases& phrases)
    : type_(type),
      sheet_(sheet),
      measure_(measure),
      phrases_(phrases),
      left_(std::max(type.margin, sheet.margin_sides)),
      width_(sheet.width - 2.0 * left_) {}

BlockContext SheetSetter::setting(Millimetres width) const {
    return {type_, measure_, phrases_, width, ease};
}

SheetSetter::Part SheetSetter::part(const SheetPiece& piece, bool after_heading) const {
    Part made;
    made.x = left_;
    made.gap = gap_above(piece, after_heading);
    if (const auto* film = std::get_if<card::LaminateTemplate>(&piece.block)) {
        LaminateOutline outline = laminate_outline(*film, setting(), sheet_.width - 2.0 * sheet_.margin_sides);
        made.fragment = std::move(outline.part);
        made.x = 0.5 * (sheet_.width - outline.width);
        return made;
    }
    if (const auto* scales = std::get_if<card::Nomogram>(&piece.block)) {
        made.fragment = nomogram(*scales, setting());
        return made;
    }
    const bool running = is<card::Note>(piece) || is<card::Steps>(piece) || is<card::Caution>(piece);
    const BlockContext here = setting(running ? std::min(width_, longest_line) : width_);
    const card::Block& block = *plain_block(piece);
    if (const auto* list = std::get_if<card::Steps>(&block)) {
        made.fragment = steps(*list, here, piece.first_number);
    } else {
        made.fragment = build(block, here);
    }
    return made;
}

}  // namespace holdwater::layout
