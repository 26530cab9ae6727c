// SPDX-License-Identifier: MIT
// The ruler: true to scale from its own zero line, labels spread so that none touch, a solid bar at its end.
#include "layout/block/blocks.hpp"
#include "layout/block/marks.hpp"
#include "layout/block/spread.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <utility>

namespace holdwater::layout {

namespace {

// Across the ruler, from the cut inwards [mm].
constexpr Millimetres small_tick = 4.0_mm;
constexpr Millimetres long_tick = 7.0_mm;
constexpr Millimetres label_at = 10.5_mm;
constexpr Millimetres zero_head = 1.2_mm;  // between the quiet zone and the highest thing at the zero line

/// The ruler as drawn at the left edge of an upright card; `along` runs down, `across` to the right.
struct Upright {
    std::vector<Item> items;
    Millimetres across;
    Millimetres cut_off;
    Millimetres too_tight;
};

PlacedLine tick_line(Millimetres across, Millimetres along, Points width_pt) {
    PlacedLine made = line(0.0_mm, along, across, along, width_pt);
    made.role = Role::ruler_tick;
    return made;
}

class RulerPlan {
  public:
    RulerPlan(const card::Ruler& block, const BlockContext& setting, Millimetres from, Millimetres to)
        : block_(block), setting_(setting), from_(from), to_(to) {}

    Upright draw();

  private:
    struct Label {
        TextLine text;
        TextStyle style;
        Millimetres at;  // along
        bool marked = false;
    };

    std::vector<Label> labels(std::size_t every) const;
    void place_ticks(Upright& made) const;
    void place_labels(Upright& made) const;
    void place_bar(Upright& made) const;
    TextStyle label_style(bool on_black) const;
    Millimetres two_line_width(const card::Text& text, const TextStyle& style) const;

    const card::Ruler& block_;
    const BlockContext& setting_;
    Millimetres from_;  // along
    Millimetres to_;
    Millimetres zero_;
    Millimetres end_;    // mm from zero: where the bar starts
    Millimetres inner_;  // across: where the labels end
    std::vector<TextLine> bar_text_;
    std::vector<TextLine> zero_text_;
};

TextStyle RulerPlan::label_style(bool on_black) const {
    TextStyle style = figure_style(setting_);
    style.role = Role::ruler_tick;
    if (on_black) {
        style.grey = 1.0;
        style.quiet_units = false;
    }
    return style;
}

/// The least width in which a text stands in two lines.
Millimetres RulerPlan::two_line_width(const card::Text& text, const TextStyle& style) const {
    constexpr Millimetres step = 0.25_mm;
    Millimetres width = widest_word(text, style, setting_.measure);
    while (break_lines(text, style, width, setting_.measure).size() > 2) {
        width += step;
    }
    return width;
}

Upright RulerPlan::draw() {
    const Millimetres line_height = leading(setting_.format.figure_pt);
    zero_ = from_ + zero_head + 0.5 * line_height;

    Millimetres widest = two_line_width(block_.zero_label, body_style(setting_));
    for (const auto& tick : block_.ticks) {
        widest = std::max(widest, one_line(tick.label, label_style(false), setting_.measure).width);
    }
    const Millimetres pad = setting_.scaled(1.2_mm);
    const Millimetres bar_inset = setting_.format.margin + 2.0 * pad;
    inner_ = std::max({label_at + widest + pad, bar_inset + two_line_width(block_.too_thick_label, label_style(true)),
                       bar_inset + two_line_width(setting_.phrases.longer, label_style(true))});
    zero_text_ = break_lines(block_.zero_label, body_style(setting_), widest, setting_.measure);

    const auto bar_lines = [&](const card::Text& text) {
        return break_lines(text, label_style(true), inner_ - bar_inset, setting_.measure);
    };
    const auto bar_height = [&](const std::vector<TextLine>& lines) {
        return lines_height(lines.size(), setting_.format.figure_pt) + 2.0 * pad;
    };
    Upright made;
    bar_text_ = bar_lines(block_.too_thick_label);
    end_ = Millimetres{block_.too_thick_mm};
    if (zero_ + end_ + bar_height(bar_text_) > to_) {
        // No room for all of it: end at the last tick that has room, and say so.
        bar_text_ = bar_lines(setting_.phrases.longer);
        const Millimetres room = to_ - bar_height(bar_text_) - zero_;
        end_ = 0.0_mm;
        for (const auto& tick : block_.ticks) {
            if (const Millimetres at{tick.at_mm}; at <= room) {
                end_ = std::max(end_, at);
            }
        }
        made.cut_off = end_;
        made.too_tight = end_ > 0.0_mm ? 0.0_mm : -room;
    }
    place_bar(made);
    place_ticks(made);
    place_labels(made);
    made.across = inner_;
    return made;
}

void RulerPlan::place_bar(Upright& made) const {
    const Millimetres pad = setting_.scaled(1.2_mm);
    constexpr Millimetres longest = 18.0_mm;  // more black says no more
    const Millimetres text = lines_height(bar_text_.size(), setting_.format.figure_pt);
    const Millimetres length = std::min(to_ - zero_ - end_, std::max(longest, text + 2.0 * pad));
    PlacedBox bar = filled_box(setting_.format.margin, zero_ + end_, inner_ - setting_.format.margin, length);
    bar.role = Role::ruler_tick;
    made.items.emplace_back(bar);
    Millimetres baseline = zero_ + end_ + std::max(pad, 0.5 * (length - text)) + ascent(setting_.format.figure_pt);
    for (const auto& one : bar_text_) {
        place(made.items, one, setting_.format.margin + pad, baseline, label_style(true));
        baseline += leading(setting_.format.figure_pt);
    }
}

void RulerPlan::place_ticks(Upright& made) const {
    made.items.emplace_back(tick_line(label_at - setting_.scaled(1.0_mm), zero_, 1.25 * heavy_pt));
    for (const auto& tick : block_.ticks) {
        const Millimetres at{tick.at_mm};
        if (at > end_) {
            continue;
        }
        const Millimetres across = tick.label.empty() && !tick.marked ? small_tick : long_tick;
        made.items.emplace_back(tick_line(across, zero_ + at, tick.marked ? heavy_pt : rule_pt));
    }
}

/// The zero line's and of the ticks every `every`th, counted from the thickest; the trip's own piece in any case. Where
/// one is left out, the next thicker tick tells a time that is long enough.
std::vector<RulerPlan::Label> RulerPlan::labels(std::size_t every) const {
    std::vector<Label> made;
    for (const auto& one : zero_text_) {
        made.push_back({one, body_style(setting_), zero_, false});
    }
    std::vector<Label> ticks;
    for (const auto& tick : block_.ticks) {
        if (const Millimetres at{tick.at_mm}; !tick.label.empty() && at <= end_) {
            const TextStyle style = label_style(tick.marked);
            ticks.push_back({one_line(tick.label, style, setting_.measure), style, zero_ + at, tick.marked});
        }
    }
    std::stable_sort(ticks.begin(), ticks.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        if (ticks[i].marked || (ticks.size() - 1 - i) % every == 0) {
            made.push_back(ticks[i]);
        }
    }
    return made;
}

void RulerPlan::place_labels(Upright& made) const {
    const Millimetres slot = 1.12 * leading(setting_.format.figure_pt);
    const auto spread_of = [&](const std::vector<Label>& all) {
        std::vector<Millimetres> wanted;
        for (const auto& label : all) {
            wanted.push_back(label.at);
        }
        return spread_apart(wanted, slot, from_ + zero_head + 0.5 * slot, zero_ + end_ - 0.5 * slot);
    };
    std::vector<Label> labels = this->labels(1);
    Spread spread = spread_of(labels);
    for (std::size_t every = 2; spread.missing > 0.0_mm && every <= block_.ticks.size(); ++every) {
        labels = this->labels(every);
        spread = spread_of(labels);
    }
    made.too_tight = std::max(made.too_tight, spread.missing);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const Label& label = labels[i];
        const Millimetres middle = spread.at[i];
        const Millimetres baseline = middle + 0.5 * cap_height(label.style.size_pt);
        if (label.marked) {
            const Millimetres pad = setting_.scaled(1.0_mm);
            made.items.emplace_back(
                filled_box(label_at - pad, middle - 0.47 * slot, label.text.width + 2.0 * pad, 0.94 * slot));
        }
        place(made.items, label.text, label_at, baseline, label.style);
        if (i < zero_text_.size()) {
            continue;  // the zero line itself reaches its label
        }
        PlacedLine leader = line(long_tick, label.at, label_at - setting_.scaled(1.0_mm), middle, hair_pt);
        leader.width_pt = label.marked ? heavy_pt : hair_pt;
        leader.role = Role::ruler_tick;
        made.items.emplace_back(leader);
    }
}

}  // namespace

RulerStrip ruler(const card::Ruler& block, const BlockContext& setting) {
    const Format& format = setting.format;
    const bool upright = format.height > format.width;
    const Millimetres length = upright ? format.height : format.width;
    Upright drawn = RulerPlan(block, setting, format.margin, length - format.margin).draw();
    RulerStrip strip;
    strip.cut_off_mm = drawn.cut_off;
    strip.too_tight = drawn.too_tight;
    strip.group = {Tag::figure, false,
                   described(block, drawn.cut_off > 0.0_mm ? drawn.cut_off : Millimetres{block.too_thick_mm})};
    const Millimetres air = setting.scaled(3.0_mm);
    if (upright) {
        strip.items = std::move(drawn.items);
        strip.left = drawn.across + air - format.margin;
    } else {
        for (auto& item : drawn.items) {
            strip.items.push_back(turned(std::move(item), format.height));
        }
        strip.bottom = drawn.across + air - format.margin;
    }
    return strip;
}

}  // namespace holdwater::layout
