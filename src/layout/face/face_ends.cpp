// SPDX-License-Identifier: MIT
// Head and foot of a face.
#include "layout/block/marks.hpp"
#include "layout/face/face.hpp"
#include "layout/reading.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

/// "2 of 3": a card whose faces fill more than one leaf.
std::string leaf_of(int index, int count, const Phrases& phrases) {
    const int leaves = (count + 1) / 2;
    return std::to_string(index / 2 + 1) + " " + phrases.of + " " + std::to_string(leaves);
}

}  // namespace

Fragment FaceMaker::header(Millimetres width, FacePlace place) const {
    const BlockContext here = setting(width, 0.0);
    TextStyle question = body_style(here);
    question.size_pt = format_.question_pt;
    question.face = Weight::bold;
    question.quiet_units = false;
    question.role = Role::heading;
    TextStyle name = body_style(here);
    name.role = Role::heading;

    // The number in a black box, to be found in a fan of cards.
    TextStyle number = question;
    number.size_pt = 1.55 * format_.question_pt;
    number.grey = 1.0;
    const TextLine digits = one_line(std::to_string(card_.number), number, measure_);
    const Millimetres box_width = std::max(here.scaled(10.5_mm), digits.width + here.scaled(4.0_mm));
    const Millimetres gap = here.scaled(2.6_mm);

    std::string tag = "*" + card_.name + "*";
    if (place.index > 0) {
        tag += " · " + phrases_.continued;
    }
    if (place.count > 2) {
        tag += " · " + leaf_of(place.index, place.count, phrases_);
    }
    // Beside the mark of the format where it has one.
    const Millimetres mark_width =
        format_.mark.empty() ? 0.0_mm : one_line(format_.mark, name, measure_).width + here.scaled(1.5_mm);
    const Fragment tag_text = paragraph(tag, name, width - box_width - gap - mark_width, measure_);
    const Fragment words = paragraph(card_.question, question, width - box_width - gap, measure_);

    Fragment made;
    const Millimetres between = here.scaled(0.5_mm);
    const Millimetres bottom_air = here.scaled(1.0_mm);
    const Millimetres height = std::max(tag_text.height + between + words.height + bottom_air, here.scaled(9.5_mm));
    made.items.emplace_back(filled_box(0.0_mm, 0.0_mm, box_width, height));
    layout::place(made.items, digits, 0.5 * (box_width - digits.width), 0.5 * (height + cap_height(number.size_pt)),
                  number);
    put(made, tag_text, box_width + gap, 0.0_mm);
    made.group.tag = Tag::title;
    if (place.index == 0) {
        made.group.alt = std::to_string(card_.number) + " " + card_.name;
    }
    if (!format_.mark.empty()) {
        const TextLine mark = one_line(format_.mark, name, measure_);
        layout::place(made.items, mark, width - mark.width, ascent(name.size_pt), name);
    }
    set_row(made.items, 0, 0);
    const std::size_t first = made.items.size();
    put(made, words, box_width + gap, tag_text.height + between);
    set_row(made.items, first, 1);
    made.items.emplace_back(filled_box(0.0_mm, height - em(heavy_pt), width, em(heavy_pt)));
    made.height = height;
    return made;
}

Fragment FaceMaker::footer(Millimetres width, FacePlace place) const {
    const BlockContext here = setting(width, 0.0);
    TextStyle small;
    small.size_pt = format_.small_pt;
    small.role = Role::artifact;
    TextStyle strong = body_style(here);
    strong.face = Weight::bold;

    Fragment made;
    const bool to_back = place.index % 2 == 0 && place.index + 1 < place.count;
    const bool to_next = place.index % 2 == 1 && place.index + 1 < place.count;
    const std::string cue = to_back   ? phrases_.turn_over
                            : to_next ? phrases_.goes_on + " " + leaf_of(place.index + 1, place.count, phrases_)
                                      : "";
    const std::string line_one = card::plain(deck_.title) + "\u00A0· " + deck_.stamp;
    const Fragment words = paragraph(deck_.footer, small, width, measure_);
    const TextLine turn = one_line(cue, strong, measure_);
    const Millimetres arrow = cap_height(strong.size_pt);
    const Millimetres turn_x = width - turn.width - 0.8 * arrow - here.scaled(1.4_mm);
    Fragment trip = paragraph(line_one, small, cue.empty() ? width : turn_x - here.scaled(3.0_mm), measure_);
    const bool beside = !(trip.too_wide > 0.0_mm);
    if (!beside) {
        // A long word beside a ruler: the cue goes under the trip's name.
        trip = paragraph(line_one, small, width, measure_);
    }
    put(made, trip, 0.0_mm, 0.0_mm);
    const Points cue_pt = beside ? small.size_pt : strong.size_pt;
    const Millimetres cue_at = beside ? 0.0_mm : trip.height;
    const Millimetres cue_ends = cue_at + lines_height(1, cue_pt);
    const Millimetres second = (cue.empty() ? trip.height : std::max(trip.height, cue_ends)) + here.scaled(0.4_mm);
    if (place.index == 0) {  // once a card
        put(made, words, 0.0_mm, second);
    }
    if (!cue.empty()) {  // last, as it is read
        const Millimetres baseline = cue_at + ascent(cue_pt);
        layout::place(made.items, turn, turn_x, baseline, strong);
        place_arrow(made.items, width - 0.8 * arrow, baseline - arrow, arrow);
    }
    made.height = place.index == 0
                      ? second + words.height
                      : std::max(trip.height, cue.empty() ? 0.0_mm : cue_at + ascent(cue_pt) + descent(strong.size_pt));
    return made;
}

}  // namespace holdwater::layout
