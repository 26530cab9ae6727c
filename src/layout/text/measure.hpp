// SPDX-License-Identifier: MIT
// How layout learns widths; implemented by draw/ from the font files and by tests with a fixed-width fake.
#pragma once

#include "layout/page.hpp"

#include <string_view>

namespace holdwater::layout {

class TextMemory;

class Measure {
  public:
    virtual ~Measure() = default;
    /// Advance width in mm of one line of UTF-8, no kerning.
    virtual Millimetres width(std::string_view text, Weight face, Points size_pt) const = 0;
    /// True if the face has a glyph for every character.
    virtual bool covers(std::string_view text, Weight face) const = 0;
    /// Where texts that were set once are kept; none: each is set anew. See memory.hpp.
    virtual TextMemory* memory() const { return nullptr; }
};

}  // namespace holdwater::layout
