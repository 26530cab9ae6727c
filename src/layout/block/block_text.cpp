// SPDX-License-Identifier: MIT
// Heading, note and steps.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <string>

namespace holdwater::layout {

Fragment heading(const card::Heading& block, const BlockContext& setting) {
    TextStyle style = body_style(setting);
    style.size_pt = setting.format.heading_pt;
    style.face = Weight::bold;
    style.quiet_units = false;
    style.role = Role::heading;
    const Millimetres air = setting.ruled ? 0.0_mm : setting.scaled(1.5_mm);
    Fragment made;
    if (!setting.ruled) {
        made.items.emplace_back(line(0.0_mm, 0.0_mm, setting.width, 0.0_mm, rule_pt));
    }
    const Fragment text = paragraph(block.text, style, setting.width, setting.measure);
    put(made, text, 0.0_mm, air);
    made.height = air + text.height;
    made.group.tag = Tag::heading;
    return made;
}

Fragment note(const card::Note& block, const BlockContext& setting) {
    return paragraph(block.text, body_style(setting), setting.width, setting.measure);
}

Fragment steps(const card::Steps& block, const BlockContext& setting, int first_number) {
    TextStyle mark = figure_style(setting);
    mark.quiet_units = false;
    const TextStyle text = body_style(setting);
    const Millimetres gutter = setting.scaled(2.2_mm);
    const Millimetres air = setting.between(setting.scaled(1.1_mm), setting.scaled(2.6_mm));
    const bool clocks =
        std::any_of(block.steps.begin(), block.steps.end(), [](const auto& s) { return !s.when.empty(); });

    std::vector<std::vector<TextLine>> marks;  // one or two columns: the number, the clock
    Millimetres number_width;
    Millimetres clock_width;
    int number = first_number;
    for (const auto& step : block.steps) {
        const TextLine count = one_line(block.numbered ? std::to_string(number++) : "", mark, setting.measure);
        const TextLine when = one_line(step.when, mark, setting.measure);
        number_width = std::max(number_width, count.width);
        clock_width = std::max(clock_width, when.width);
        marks.push_back({count, when});
    }
    // Clock times end at one line, words begin at one.
    const bool words = std::none_of(block.steps.begin(), block.steps.end(), [](const auto& s) {
        return s.when.find_first_of("0123456789") != std::string::npos;
    });
    const Millimetres clock_x = block.numbered ? number_width + gutter : 0.0_mm;
    const Millimetres text_x = clock_x + (clocks ? clock_width + gutter : 0.0_mm);

    Fragment made;
    made.group.tag = Tag::list;
    for (std::size_t i = 0; i < block.steps.size(); ++i) {
        if (i > 0) {
            if (clocks) {  // a rule leads the eye from the time to its words
                made.height += 0.5 * air;
                made.items.emplace_back(line(0.0_mm, made.height, setting.width, made.height, hair_pt));
                made.height += 0.5 * air + setting.scaled(0.3_mm);
            } else {
                made.height += air;
            }
        }
        const Millimetres baseline = made.height + ascent(mark.size_pt);
        const std::size_t first = made.items.size();
        place(made.items, marks[i][0], number_width - marks[i][0].width, baseline, mark);
        place(made.items, marks[i][1], clock_x + (words ? 0.0_mm : clock_width - marks[i][1].width), baseline, mark);
        set_cell(made.items, first, 0);
        const std::size_t after_mark = made.items.size();
        const Fragment said = paragraph(block.steps[i].text, text, setting.width - text_x, setting.measure);
        const Millimetres drop = ascent(mark.size_pt) - ascent(text.size_pt);  // to share the baseline
        put(made, said, text_x, made.height + drop);
        set_cell(made.items, after_mark, 1);
        set_row(made.items, first, i);
        made.height += std::max(drop + said.height, lines_height(1, mark.size_pt));
    }
    return made;
}

}  // namespace holdwater::layout
