// SPDX-License-Identifier: MIT
// One block of a plain sheet as a fragment with its place across the sheet.
#pragma once

#include "layout/block/blocks.hpp"

#include <cstddef>
#include <utility>

namespace holdwater::layout {

/// A block on its sheet; steps that go on from an earlier sheet go on counting.
struct SheetPiece {
    card::SheetBlock block;
    int first_number = 1;
};

template <class Kind>
bool is(const SheetPiece& piece) {
    const auto* block = std::get_if<card::Block>(&piece.block);
    return block != nullptr && std::holds_alternative<Kind>(*block);
}

/// What an error calls it.
const char* block_name(const SheetPiece& piece);

/// As layout/split.hpp has it for cards; the title of a table that goes on says so.
std::size_t rows_of(const SheetPiece& piece);
std::pair<SheetPiece, SheetPiece> split_after(const SheetPiece& piece, std::size_t rows, const Phrases& phrases);

/// Sets blocks for one sheet of paper.
class SheetSetter {
  public:
    SheetSetter(const Format& type, const Sheet& sheet, const Measure& measure, const Phrases& phrases);

    struct Part {
        Fragment fragment;
        Millimetres x;    // on the sheet
        Millimetres gap;  // wanted above it
    };
    Part part(const SheetPiece& piece, bool after_heading) const;

    BlockContext setting() const { return setting(width_); }
    Millimetres left() const { return left_; }
    Millimetres width() const { return width_; }

  private:
    BlockContext setting(Millimetres width) const;

    const Format& type_;
    const Sheet& sheet_;
    const Measure& measure_;
    const Phrases& phrases_;
    Millimetres left_;  // of the text
    Millimetres width_;
};

}  // namespace holdwater::layout
