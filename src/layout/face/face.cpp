// SPDX-License-Identifier: MIT
#include "layout/face/face.hpp"

#include "layout/face/most_that.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace holdwater::layout {

struct FaceMaker::Column {
    Millimetres x;
    Millimetres width;
    Millimetres bottom;  // of the room, from the top of the card
    RulerStrip strip;
    int rulers = 0;
    // What stands above and below the blocks, whatever they are.
    Millimetres head;
    Millimetres foot;
    Fragment cautions;
};

struct FaceMaker::Stack {
    std::vector<Fragment> parts;
    std::vector<Millimetres> gaps;  // above each part; the first is below the head
    Millimetres room;               // for parts and their gaps
    Millimetres needed;
};

namespace {

constexpr Millimetres gap_tight = 2.1_mm;  // between blocks, for a 10 pt body
constexpr Millimetres gap_roomy = 5.0_mm;
constexpr Millimetres gap_most = 8.0_mm;  // when all else has its fill
constexpr Millimetres after_heading = 1.8_mm;
constexpr Millimetres above_cautions = 2.0_mm;
constexpr Millimetres above_foot = 1.4_mm;

bool ends_with_rule(const Piece& piece) {
    return std::holds_alternative<card::Table>(piece.block) || std::holds_alternative<card::WriteIn>(piece.block) ||
           std::holds_alternative<card::Ladder>(piece.block) || std::holds_alternative<card::Thermometer>(piece.block);
}

/// Set with more air it is never lower: all but key numbers, beside which more may find room when they are larger.
bool is_higher_with_air(const Piece& piece) {
    return !std::holds_alternative<card::KeyNumber>(piece.block) && !std::holds_alternative<card::KeyRow>(piece.block);
}

bool is_heading(const Piece& piece) {
    return std::holds_alternative<card::Heading>(piece.block);
}

}  // namespace

std::shared_ptr<const FaceMaker::Column> FaceMaker::column_for(const std::vector<Piece>& pieces) const {
    const bool ruled = std::any_of(pieces.begin(), pieces.end(),
                                   [](const Piece& piece) { return std::holds_alternative<card::Ruler>(piece.block); });
    if (ruled) {
        return std::make_shared<const Column>(new_column(pieces));
    }
    if (!plain_column_) {
        plain_column_ = std::make_shared<const Column>(new_column({}));
    }
    return plain_column_;
}

FaceMaker::Column FaceMaker::new_column(const std::vector<Piece>& pieces) const {
    Column column;
    column.x = format_.margin;
    column.width = format_.width - 2.0 * format_.margin;
    column.bottom = format_.height - format_.margin;
    for (const auto& piece : pieces) {
        if (const auto* block = std::get_if<card::Ruler>(&piece.block)) {
            column.strip = ruler(*block, setting(column.width, 0.0));
            ++column.rulers;
        }
    }
    column.x += column.strip.left;
    column.width -= column.strip.left;
    column.bottom -= column.strip.bottom;
    // The foot is set as for a face that goes on: the words of the turn must have their room in any case.
    column.head = header(column.width, {1, 4}).height;
    column.foot = footer(column.width, {0, 4}).height;
    column.cautions = cautions(card_.cautions, setting(column.width, 0.0));
    return column;
}

FaceMaker::Stack FaceMaker::stack(const std::vector<Piece>& pieces, const Column& column, const Format& type,
                                  double ease) const {
    Stack made;
    BlockContext here{type, measure_, phrases_, column.width, ease};
    const BlockContext tight = setting(column.width, 0.0);
    const Millimetres fixed = column.head + column.foot + column.cautions.height + tight.scaled(above_foot) +
                              (column.cautions.height > 0.0_mm ? tight.scaled(above_cautions) : 0.0_mm);
    made.room = column.bottom - format_.margin - fixed;
    bool after_head = false;
    for (const auto& piece : pieces) {
        Fragment part;
        here.ruled = made.parts.empty() || ends_with_rule(pieces[made.parts.size() - 1]);
        if (const auto* list = std::get_if<card::Steps>(&piece.block)) {
            part = steps(*list, here, piece.first_number);
        } else if (const auto* block = std::get_if<card::Ruler>(&piece.block)) {
            part = heading({block->title}, here);
        } else {
            part = build(piece.block, here);
        }
        const Millimetres gap = after_head ? here.between(here.scaled(after_heading), here.scaled(1.4 * after_heading))
                                           : here.between(here.scaled(gap_tight), here.scaled(gap_roomy));
        made.needed += gap + part.height;
        made.gaps.push_back(gap);
        made.parts.push_back(std::move(part));
        after_head = is_heading(piece);
    }
    return made;
}

FaceMaker::Stack FaceMaker::roomiest(const std::vector<Piece>& pieces, const Column& column) const {
    const auto fits = [](const Stack& made) {
        return made.needed <= made.room && std::all_of(made.parts.begin(), made.parts.end(),
                                                       [](const Fragment& part) { return part.too_wide <= 1e-6_mm; });
    };
    // First larger type, where the face has room for it and air besides; then as much air as there is.
    constexpr int grades = 25;
    constexpr int airy = 15;
    const bool steady = std::all_of(pieces.begin(), pieces.end(), is_higher_with_air);
    for (const double larger : {1.2, 1.15, 1.1, 1.05, 1.0}) {
        Format type = format_;
        for (Points* size : {&type.body_pt, &type.figure_pt}) {
            *size *= larger;
        }
        std::optional<Stack> roomiest;
        const auto has_room = [&](int grade) {
            Stack made = stack(pieces, column, type, static_cast<double>(grade) / grades);
            const bool squeezed =
                std::any_of(made.parts.begin(), made.parts.end(), [](const auto& part) { return part.squeezed; });
            if (!fits(made) || (larger > 1.0 && squeezed)) {
                return false;
            }
            roomiest = std::move(made);
            return true;
        };
        const int least = larger > 1.0 ? airy : 1;
        if (steady) {
            most_that(least, grades, has_room);  // the last that had room is the roomiest
        } else {
            for (int grade = grades; grade >= least && !has_room(grade); --grade) {
            }
        }
        if (roomiest) {
            return *std::move(roomiest);
        }
    }
    return stack(pieces, column, format_, 0.0);
}

FaceMaker::Fit FaceMaker::fit(const std::vector<Piece>& pieces, double ease) const {
    constexpr Millimetres rounding = 1e-6_mm;
    const auto kept = column_for(pieces);
    const Column& column = *kept;
    const Stack made = stack(pieces, column, format_, ease);
    Fit fit;
    fit.missing = made.needed - made.room > rounding ? made.needed - made.room : 0.0_mm;
    fit.labels_missing = column.strip.too_tight > rounding ? column.strip.too_tight : 0.0_mm;
    if (column.rulers > 1) {
        fit.missing = std::max(fit.missing, format_.height);
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (made.parts[i].too_wide > std::max(rounding, fit.too_wide)) {
            fit.too_wide = made.parts[i].too_wide;
            fit.widest = block_name(pieces[i].block);
        }
    }
    if (column.cautions.too_wide > std::max(rounding, fit.too_wide)) {
        fit.too_wide = column.cautions.too_wide;
        fit.widest = "cautions";
    }
    return fit;
}

double FaceMaker::filled(const std::vector<Piece>& pieces) const {
    const auto kept = column_for(pieces);
    const Column& column = *kept;
    const Stack made = stack(pieces, column, format_, 0.0);
    return column.rulers > 0 ? 1.0 : made.needed / made.room;
}

Millimetres FaceMaker::ruler_cut_off(const std::vector<Piece>& pieces) const {
    return column_for(pieces)->strip.cut_off_mm;
}

Page FaceMaker::draw(const std::vector<Piece>& pieces, FacePlace place) const {
    const auto kept = column_for(pieces);
    const Column& column = *kept;
    Stack made = roomiest(pieces, column);
    // What is still left goes between the blocks, up to a point; the rest stays above the cautions.
    const BlockContext here = setting(column.width, 0.0);
    const Millimetres spare = std::max(0.0_mm, made.room - made.needed);
    const Millimetres more = made.parts.empty() ? 0.0_mm
                                                : std::min(spare / static_cast<double>(made.parts.size()),
                                                           here.scaled(gap_most - gap_roomy));

    Page page;
    page.width = format_.width;
    page.height = format_.height;
    page.name = card_.key + "-" + std::to_string(place.index + 1);
    Millimetres y = format_.margin;
    put_group(page, header(column.width, place), column.x, y);
    int strip = -1;
    y += column.head;
    for (std::size_t i = 0; i < made.parts.size(); ++i) {
        y += made.gaps[i] + (i > 0 && is_heading(pieces[i - 1]) ? 0.0_mm : more);
        put_group(page, made.parts[i], column.x, y);
        if (std::holds_alternative<card::Ruler>(pieces[i].block)) {
            strip = add_group(page, column.strip.group);  // read after its title, drawn last
        }
        y += made.parts[i].height;
    }
    const Fragment foot = footer(column.width, place);
    const Millimetres foot_top = column.bottom - foot.height;
    put_group(page, column.cautions, column.x, foot_top - here.scaled(above_foot) - column.cautions.height);
    if (place.index == 0) {
        put_group(page, foot, column.x, foot_top);
    } else {
        put(page.items, foot.items, column.x, foot_top);  // it was read on the card's first face
    }
    if (strip >= 0) {
        put_in_group(page, strip, column.strip.items, 0.0_mm, 0.0_mm);
    }
    return page;
}

}  // namespace holdwater::layout
