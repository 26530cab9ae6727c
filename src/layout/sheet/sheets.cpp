// SPDX-License-Identifier: MIT
// Plain sheets: blocks one under the other, a new sheet where one is full.
#include "layout/layout.hpp"
#include "layout/reading.hpp"
#include "layout/sheet/sheet_blocks.hpp"
#include "layout/sheet/sheet_head.hpp"
#include "layout/sheet/strips.hpp"
#include "layout/text/memory.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace holdwater::layout {

namespace {

constexpr Millimetres below_head = 5.0_mm;
constexpr Millimetres above_foot = 3.0_mm;
constexpr Millimetres rounding = 1e-6_mm;

using SheetPieces = std::vector<SheetPiece>;

class SheetFlow {
  public:
    SheetFlow(const card::Sheets& sheets, const Format& type, const Sheet& sheet, const Measure& measure,
              const Phrases& phrases)
        : sheets_(sheets),
          type_(type),
          sheet_(sheet),
          measure_(measure),
          phrases_(phrases),
          setter_(type, sheet, measure, phrases) {
        TextStyle small;
        small.size_pt = type.small_pt;
        small.role = Role::artifact;
        foot_ = paragraph(sheets.footer, small, setter_.width(), measure);
        top_ = sheet.margin_top + sheet_head_height + below_head;
        bottom_ = sheet.height - sheet.margin_bottom - foot_.height - above_foot;
        y_ = top_;
    }

    problem::Result<std::vector<Page>> run();

  private:
    using Part = SheetSetter::Part;

    void place_name();
    std::vector<Part> parts_of(const SheetPieces& group) const;
    Millimetres height_of(const SheetPieces& group) const;
    bool fits(const SheetPieces& group) const { return y_ + height_of(group) <= bottom_ + rounding; }
    std::size_t rows_that_fit(const SheetPieces& group) const;
    void put_parts(const SheetPieces& group);
    void add(SheetPieces group);
    void add_strips(const std::vector<const card::Strip*>& strips);
    void next_sheet();
    void finish();
    void refuse(problem::Code code, const char* what, Millimetres by, const char* too);

    const card::Sheets& sheets_;
    const Format& type_;
    const Sheet& sheet_;
    const Measure& measure_;
    const Phrases& phrases_;
    SheetSetter setter_;
    Millimetres top_;
    Millimetres bottom_;
    Millimetres y_;
    Fragment foot_;
    Page current_;
    std::vector<Page> pages_;
    problem::Problems problems_;
};

void SheetFlow::refuse(problem::Code code, const char* what, Millimetres by, const char* too) {
    problems_.push_back(problem::error(code,
                                       fmt::format("{}: the {} is {:.1f} mm too {} for the sheet {}", sheets_.name,
                                                   what, by.value(), too, sheet_.name),
                                       "shorten it, or take a larger sheet"));
}

void SheetFlow::next_sheet() {
    if (!current_.items.empty()) {
        pages_.push_back(std::exchange(current_, {}));
    }
    y_ = top_;
}

std::vector<SheetFlow::Part> SheetFlow::parts_of(const SheetPieces& group) const {
    std::vector<Part> parts;
    bool after_heading = false;
    for (const auto& piece : group) {
        parts.push_back(setter_.part(piece, after_heading));
        after_heading = is<card::Heading>(piece);
    }
    if (!parts.empty() && current_.items.empty()) {
        parts.front().gap = 0.0_mm;
    }
    return parts;
}

Millimetres SheetFlow::height_of(const SheetPieces& group) const {
    Millimetres height;
    for (const auto& part : parts_of(group)) {
        height += part.gap + part.fragment.height;
    }
    return height;
}

void SheetFlow::put_parts(const SheetPieces& group) {
    const auto parts = parts_of(group);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        y_ += parts[i].gap;
        put_group(current_, parts[i].fragment, parts[i].x, y_);
        y_ += parts[i].fragment.height;
        if (parts[i].fragment.too_wide > rounding) {
            refuse("block-too-wide", block_name(group[i]), parts[i].fragment.too_wide, "wide");
        }
    }
}

/// How many rows of the last block still stand on this sheet; heights grow with the rows, so halving finds it.
std::size_t SheetFlow::rows_that_fit(const SheetPieces& group) const {
    std::size_t low = 0;
    std::size_t high = rows_of(group.back());
    while (low + 1 < high) {
        const std::size_t middle = low + (high - low) / 2;
        SheetPieces trial = group;
        trial.back() = split_after(group.back(), middle, phrases_).first;
        (fits(trial) ? low : high) = middle;
    }
    return low;
}

void SheetFlow::add(SheetPieces group) {
    constexpr std::size_t least_here = 3;  // fewer rows at the foot of a sheet are not worth their head
    while (!fits(group)) {
        const bool fresh = current_.items.empty();
        std::size_t rows = rows_that_fit(group);
        if (rows > 2 && rows + 1 == rows_of(group.back())) {
            --rows;  // no single row on the next sheet
        }
        if (rows == 0 && fresh) {
            refuse("block-too-tall", block_name(group.back()), y_ + height_of(group) - bottom_, "tall");
            return;
        }
        if (rows < least_here && !fresh) {
            next_sheet();
            continue;
        }
        auto [first, second] = split_after(group.back(), rows, phrases_);
        group.back() = std::move(first);
        put_parts(group);
        next_sheet();
        group = {std::move(second)};
    }
    put_parts(group);
}

void SheetFlow::add_strips(const std::vector<const card::Strip*>& strips) {
    constexpr Millimetres between = 2.5_mm;
    next_sheet();
    const Millimetres right = sheet_.width - sheet_.margin_sides;
    Millimetres x = sheet_.margin_sides;
    if (x + strip_width > right) {
        refuse("strip-too-wide", "strip", x + strip_width - right, "wide");
        return;
    }
    for (const card::Strip* strip : strips) {
        const StripPieces cut = strip_pieces(*strip, setter_.setting(), bottom_ - top_);
        if (cut.too_tight > rounding) {
            refuse("strip-crowded", "labelling of a strip", cut.too_tight, "tight");
        }
        for (const Fragment& piece : cut.pieces) {
            if (x + strip_width > right + rounding) {
                next_sheet();
                x = sheet_.margin_sides;
            }
            put_group(current_, piece, x, bottom_ - piece.height);
            x += strip_width + between;
        }
    }
    next_sheet();
}

void SheetFlow::place_name() {
    TextStyle style = body_style(setter_.setting());
    style.size_pt = type_.question_pt;
    style.face = Weight::bold;
    style.role = Role::heading;
    Fragment name = paragraph(sheets_.name + " · " + card::plain(sheets_.title), style, setter_.width(), measure_);
    name.group.tag = Tag::title;
    put_group(current_, name, setter_.left(), y_);
    y_ += name.height;
}

void SheetFlow::finish() {
    for (std::size_t i = 0; i < pages_.size(); ++i) {
        Page& page = pages_[i];
        page.width = sheet_.width;
        page.height = sheet_.height;
        page.name = fmt::format("{} {} {} {}", phrases_.sheet, i + 1, phrases_.of, pages_.size());
        place_sheet_head(page, sheet_, sheets_.title + " · " + sheets_.name + " " + sheets_.stamp, measure_, phrases_);
        put(page.items, foot_.items, setter_.left(), sheet_.height - sheet_.margin_bottom - foot_.height);
    }
}

problem::Result<std::vector<Page>> SheetFlow::run() {
    place_name();
    SheetPieces group;                       // headings and what they head
    std::vector<const card::Strip*> strips;  // that stand side by side
    const auto flush = [&] {
        if (!group.empty()) {
            add(std::exchange(group, {}));
        }
        if (!strips.empty()) {
            add_strips(std::exchange(strips, {}));
        }
    };
    for (const auto& block : sheets_.blocks) {
        const auto* strip = std::get_if<card::Strip>(&block);
        const SheetPiece piece{block};
        if (strip != nullptr ? !group.empty() : !strips.empty()) {
            flush();
        }
        if (strip != nullptr) {
            strips.push_back(strip);
        } else if (is<card::Turn>(piece)) {
            flush();
            next_sheet();
        } else if (is<card::Ruler>(piece)) {
            problems_.push_back(problem::error("not-for-sheets", sheets_.name + ": a ruler stands on a card",
                                               "print it with a deck, or give a strip"));
        } else {
            group.push_back(piece);
            if (!is<card::Heading>(piece)) {
                flush();
            }
        }
    }
    flush();
    next_sheet();
    if (problem::has_error(problems_)) {
        return problems_;
    }
    finish();
    if (const auto found = check_sheets(pages_, type_, sheet_, measure_); problem::has_error(found)) {
        return found;
    }
    return {std::move(pages_), std::move(problems_)};
}

}  // namespace

problem::Result<std::vector<Page>> lay_out_sheets(const card::Sheets& sheets, const Format& type, const Sheet& sheet,
                                                  const Measure& measure, const Phrases& phrases) {
    const CachedMeasure kept(measure);
    return SheetFlow(sheets, type, sheet, kept, phrases).run();
}

}  // namespace holdwater::layout
