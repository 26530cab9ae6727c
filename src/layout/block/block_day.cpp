// SPDX-License-Identifier: MIT
// The day as a bar: what goes on as patterns, what to do as flags with clock times.
#include "layout/block/blocks.hpp"
#include "layout/block/pattern.hpp"
#include "layout/reading.hpp"
#include "layout/block/spread.hpp"

#include <algorithm>
#include <string>

namespace holdwater::layout {

namespace {

struct MarkText {
    TextLine clock;
    TextLine words;
    double gap = 0.0;
    double width() const { return clock.width + (words.runs.empty() ? 0.0 : gap + words.width); }
};

TextStyle clock_style(const BlockContext& setting) {
    TextStyle style = figure_style(setting);
    style.role = Role::paragraph;
    return style;
}

/// The name of a span on a white plate in it, or in the key below where it has no room.
Fragment span_names(const card::DayBar& block, const BlockContext& setting, const std::vector<bool>& named) {
    const TextStyle style = body_style(setting);
    const double swatch = setting.scaled(5.0);
    const double height = lines_height(1, style.size_pt);
    Fragment made;
    double x = 0.0;
    double y = 0.0;
    std::vector<card::Text> done;  // a name that stands in the bar explains its pattern everywhere
    for (std::size_t i = 0; i < named.size(); ++i) {
        if (named[i]) {
            done.push_back(block.spans[i].label);
        }
    }
    for (std::size_t i = 0; i < block.spans.size(); ++i) {
        const auto& span = block.spans[i];
        if (span.label.empty() || std::find(done.begin(), done.end(), span.label) != done.end()) {
            continue;
        }
        done.push_back(span.label);
        const TextLine text = one_line(span.label, style, setting.measure);
        const double width = swatch + setting.scaled(1.4) + text.width;
        if (x > 0.0 && x + width > setting.width) {
            x = 0.0;
            y += leading(style.size_pt) + setting.scaled(0.6);
        }
        place_pattern(made.items, span.kind, x, y + 0.06 * height, swatch, 0.75 * height);
        place(made.items, text, x + swatch + setting.scaled(1.4), y + ascent(style.size_pt), style);
        x += width + setting.scaled(4.0);
        made.height = y + height;
    }
    return made;
}

}  // namespace

Fragment day_bar(const card::DayBar& block, const BlockContext& setting) {
    const double width = setting.width;
    const double hours = std::max(block.to - block.from, 1e-6);
    const auto x_of = [&](double at) { return std::clamp((at - block.from) / hours, 0.0, 1.0) * width; };

    std::vector<card::DayBar::Mark> marks = block.marks;
    std::stable_sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    std::vector<MarkText> texts;
    std::vector<double> at;
    std::vector<double> widths;
    for (const auto& mark : marks) {
        texts.push_back({one_line(mark.label, clock_style(setting), setting.measure),
                         one_line(mark.above, body_style(setting), setting.measure), setting.scaled(1.3)});
        at.push_back(x_of(mark.at));
        widths.push_back(texts.back().width());
    }
    constexpr int most_rows = 9;
    const auto flags = flag_rows(at, widths, 0.0, width, setting.scaled(2.2), most_rows);

    Fragment made;
    made.group = {Tag::figure, false, described(block)};
    if (flags.empty() && !marks.empty()) {
        made.too_wide = *std::max_element(widths.begin(), widths.end());
        return made;
    }
    const double row = leading(setting.format.figure_pt) + setting.between(0.2, 1.2);
    int rows = 0;
    for (const auto& flag : flags) {
        rows = std::max(rows, flag.row + 1);
    }
    const double bar_top = static_cast<double>(rows) * row + (rows > 0 ? setting.scaled(1.6) : 0.0);
    const double bar = setting.between(setting.scaled(6.5), setting.scaled(8.5));

    std::vector<bool> named;
    const TextStyle name_style = body_style(setting);
    for (const auto& span : block.spans) {
        const double x = x_of(span.from);
        const double room = x_of(span.to) - x;
        place_pattern(made.items, span.kind, x, bar_top, room, bar);
        const TextLine text = one_line(span.label, name_style, setting.measure);
        const double pad = setting.scaled(0.9);
        const bool fits = !span.label.empty() && text.width + 2.0 * pad + setting.scaled(1.6) <= room;
        if (fits) {
            const double left = x + 0.5 * (room - text.width);
            const double baseline = bar_top + 0.5 * (bar + cap_height(name_style.size_pt)) - 0.2;
            const double up = ascent(name_style.size_pt) + 0.3;
            made.items.emplace_back(filled_box(left - pad, baseline - up, text.width + 2.0 * pad,
                                               up + descent(name_style.size_pt) + 0.3, 1.0));
            place(made.items, text, left, baseline, name_style);
        }
        named.push_back(fits);
    }
    made.items.emplace_back(frame(0.0, bar_top, width, bar, 1.5 * rule_pt));

    for (std::size_t i = 0; i < flags.size(); ++i) {
        const double baseline =
            bar_top - setting.scaled(1.6) - static_cast<double>(flags[i].row) * row - descent(setting.format.figure_pt);
        const double x = std::clamp(at[i], 0.5 * em(rule_pt), width - 0.5 * em(rule_pt));
        place(made.items, texts[i].clock, flags[i].left, baseline, clock_style(setting));
        place(made.items, texts[i].words, flags[i].left + texts[i].clock.width + texts[i].gap, baseline,
              body_style(setting));
        made.items.emplace_back(line(x, baseline + descent(setting.format.figure_pt) + 0.3, x, bar_top, rule_pt));
    }

    double bottom = bar_top + bar;
    const Fragment key = span_names(block, setting, named);
    if (key.height > 0.0) {
        bottom += setting.scaled(1.6);
        put(made, key, 0.0, bottom);
        bottom += key.height;
    }
    made.height = bottom;
    return made;
}

}  // namespace holdwater::layout
