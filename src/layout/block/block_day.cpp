// SPDX-License-Identifier: MIT
// The day as a bar: what goes on as patterns, what to do as flags with clock times.
#include "layout/block/blocks.hpp"
#include "layout/block/day_flags.hpp"
#include "layout/block/pattern.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <string>

namespace holdwater::layout {

namespace {

/// The name of a span on a white plate in it, or in the key below where it has no room.
Fragment span_names(const card::DayBar& block, const BlockContext& setting, const std::vector<bool>& named) {
    const TextStyle style = body_style(setting);
    const Millimetres swatch = setting.scaled(5.0_mm);
    const Millimetres height = lines_height(1, style.size_pt);
    Fragment made;
    Millimetres x;
    Millimetres y;
    std::vector<card::Text> done;  // a name that stands in the bar explains its pattern everywhere
    for (std::size_t i = 0; i < named.size(); ++i) {
        if (named[i]) {
            done.push_back(block.spans[i].label);
        }
    }
    for (const auto& span : block.spans) {
        if (span.label.empty() || std::find(done.begin(), done.end(), span.label) != done.end()) {
            continue;
        }
        done.push_back(span.label);
        const TextLine text = one_line(span.label, style, setting.measure);
        const Millimetres width = swatch + setting.scaled(1.4_mm) + text.width;
        if (x > 0.0_mm && x + width > setting.width) {
            x = 0.0_mm;
            y += leading(style.size_pt) + setting.scaled(0.6_mm);
        }
        place_pattern(made.items, span.kind, x, y + 0.06 * height, swatch, 0.75 * height);
        place(made.items, text, x + swatch + setting.scaled(1.4_mm), y + ascent(style.size_pt), style);
        x += width + setting.scaled(4.0_mm);
        made.height = y + height;
    }
    return made;
}

}  // namespace

Fragment day_bar(const card::DayBar& block, const BlockContext& setting) {
    const Millimetres width = setting.width;
    const double hours = std::max(block.to - block.from, 1e-6);
    const auto x_of = [&](double at) { return std::clamp((at - block.from) / hours, 0.0, 1.0) * width; };

    std::vector<card::DayBar::Mark> marks = block.marks;
    std::stable_sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    std::vector<Millimetres> at;
    for (const auto& mark : marks) {
        at.push_back(x_of(mark.at));
    }
    const DayFlags flags = day_flags(marks, at, setting);

    Fragment made;
    made.group = {Tag::figure, false, described(block)};
    const Millimetres row = leading(setting.format.figure_pt) + setting.between(0.2_mm, 1.2_mm);
    int rows = flags.bare.empty() ? 0 : 1;
    for (const auto& flag : flags.flags) {
        rows = std::max(rows, flag.row + 1);
    }
    const Millimetres bar_top = static_cast<double>(rows) * row + (rows > 0 ? setting.scaled(1.6_mm) : 0.0_mm);
    const Millimetres bar = setting.between(setting.scaled(6.5_mm), setting.scaled(8.5_mm));

    std::vector<bool> named;
    const TextStyle name_style = body_style(setting);
    for (const auto& span : block.spans) {
        const Millimetres x = x_of(span.from);
        const Millimetres room = x_of(span.to) - x;
        place_pattern(made.items, span.kind, x, bar_top, room, bar);
        const TextLine text = one_line(span.label, name_style, setting.measure);
        const Millimetres pad = setting.scaled(0.9_mm);
        const bool fits = !span.label.empty() && text.width + 2.0 * pad + setting.scaled(1.6_mm) <= room;
        if (fits) {
            const Millimetres left = x + 0.5 * (room - text.width);
            const Millimetres baseline = bar_top + 0.5 * (bar + cap_height(name_style.size_pt)) - 0.2_mm;
            const Millimetres up = ascent(name_style.size_pt) + 0.3_mm;
            made.items.emplace_back(filled_box(left - pad, baseline - up, text.width + 2.0 * pad,
                                               up + descent(name_style.size_pt) + 0.3_mm, 1.0));
            place(made.items, text, left, baseline, name_style);
        }
        named.push_back(fits);
    }
    made.items.emplace_back(frame(0.0_mm, bar_top, width, bar, 1.5 * rule_pt));

    constexpr Millimetres below_flag = 0.3_mm;  // mm, between a label and its leader
    const auto lead_down = [&](Millimetres x, Millimetres from) {
        x = std::clamp(x, 0.5 * em(rule_pt), width - 0.5 * em(rule_pt));
        made.items.emplace_back(line(x, from, x, bar_top, rule_pt));
    };
    for (const auto& flag : flags.flags) {
        const Millimetres baseline =
            bar_top - setting.scaled(1.6_mm) - static_cast<double>(flag.row) * row - descent(setting.format.figure_pt);
        for (const auto& text : flag.texts) {
            place(made.items, text.clock, flag.left + text.x, baseline, day_clock_style(setting));
            place(made.items, text.words, flag.left + text.words_x, baseline, body_style(setting));
        }
        for (const Millimetres x : flag.at) {
            lead_down(x, baseline + descent(setting.format.figure_pt) + below_flag);
        }
    }
    for (const Millimetres x : flags.bare) {  // as far up as a leader from the lowest row of flags
        lead_down(x, bar_top - setting.scaled(1.6_mm) + below_flag);
    }

    Millimetres bottom = bar_top + bar;
    const Fragment key = span_names(block, setting, named);
    if (key.height > 0.0_mm) {
        bottom += setting.scaled(1.6_mm);
        put(made, key, 0.0_mm, bottom);
        bottom += key.height;
    }
    made.height = bottom;
    return made;
}

}  // namespace holdwater::layout
