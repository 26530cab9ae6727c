// SPDX-License-Identifier: MIT
// One face of a card: head, blocks, cautions, foot.
#pragma once

#include "card/content.hpp"
#include "layout/block/blocks.hpp"

#include <memory>
#include <string>
#include <vector>

namespace holdwater::layout {

/// A block on its face; steps that go on from an earlier face go on counting.
struct Piece {
    card::Block block;
    int first_number = 1;
};

/// What the head and the foot say of the face's place among the card's faces.
struct FacePlace {
    int index = 0;  // 0 the face, 1 its back, 2 the face of the next leaf, ...
    int count = 1;
};

class FaceMaker {
  public:
    FaceMaker(const card::Deck& deck, const card::Card& card, const Format& format, const Measure& measure,
              const Phrases& phrases)
        : deck_(deck), card_(card), format_(format), measure_(measure), phrases_(phrases) {}

    struct Fit {
        Millimetres missing;         // mm of height; 0: fits
        Millimetres too_wide;        // mm
        std::string widest;          // which block
        Millimetres labels_missing;  // mm along a ruler
        bool fits() const { return missing <= 0.0_mm && too_wide <= 0.0_mm && labels_missing <= 0.0_mm; }
    };

    /// Whether the blocks fit one face; `ease` 0 as tight as may be, 1 roomy.
    Fit fit(const std::vector<Piece>& pieces, double ease = 0.0) const;

    /// Share of the face that its blocks fill when set tight.
    double filled(const std::vector<Piece>& pieces) const;

    /// The face, as roomy as its content allows.
    Page draw(const std::vector<Piece>& pieces, FacePlace place) const;

    /// From where on a ruler on this face is cut off [mm]; 0: whole or no ruler.
    Millimetres ruler_cut_off(const std::vector<Piece>& pieces) const;

  private:
    struct Column;  // the room that a ruler leaves
    struct Stack;   // blocks of a face one under the other

    BlockContext setting(Millimetres width, double ease) const { return {format_, measure_, phrases_, width, ease}; }
    std::shared_ptr<const Column> column_for(const std::vector<Piece>& pieces) const;
    Column new_column(const std::vector<Piece>& pieces) const;
    Stack stack(const std::vector<Piece>& pieces, const Column& column, const Format& type, double ease) const;
    Stack roomiest(const std::vector<Piece>& pieces, const Column& column) const;
    Fragment header(Millimetres width, FacePlace place) const;
    Fragment footer(Millimetres width, FacePlace place) const;

    const card::Deck& deck_;
    const card::Card& card_;
    const Format& format_;
    const Measure& measure_;
    const Phrases& phrases_;
    mutable std::shared_ptr<const Column> plain_column_;  // of every face without a ruler; made when first asked for
};

}  // namespace holdwater::layout
