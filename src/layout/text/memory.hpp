// SPDX-License-Identifier: MIT
// What was measured once is kept: a face is tried in dozens of grades of air, and its lines break the same in each.
#pragma once

#include "layout/text/measure.hpp"
#include "layout/text/text.hpp"

#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace holdwater::layout {

/// A part that no line break may enter, with what follows it.
struct Atom {
    std::vector<TextRun> runs;
    Millimetres width;
    bool space_after = false;
    Millimetres space;  // width of that space
    TextRun space_run;
};

/// A text in one style: what was asked of it so far.
struct SetText {
    TextStyle style;
    std::optional<TextLine> line;
    std::optional<std::vector<Atom>> atoms;
    struct Broken {
        Millimetres width;
        Millimetres first_indent;
        std::vector<TextLine> lines;
    };
    std::deque<Broken> broken;  // one a column; a deque, so that what was handed out stays where it is
};

class TextMemory {
  public:
    /// The text in this style; its tone and role do not matter. Stays where it is as long as the memory lives.
    SetText& of(std::string_view text, const TextStyle& style);

  private:
    struct Hash {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
    };
    std::unordered_map<std::string, std::deque<SetText>, Hash, std::equal_to<>> texts_;
};

/// Another measure with a memory, for one run of the layout in one thread.
class CachedMeasure : public Measure {
  public:
    explicit CachedMeasure(const Measure& of) : of_(of) {}
    Millimetres width(std::string_view text, Weight face, Points size_pt) const override {
        return of_.width(text, face, size_pt);
    }
    bool covers(std::string_view text, Weight face) const override { return of_.covers(text, face); }
    TextMemory* memory() const override { return &memory_; }

  private:
    const Measure& of_;
    mutable TextMemory memory_;
};

}  // namespace holdwater::layout
