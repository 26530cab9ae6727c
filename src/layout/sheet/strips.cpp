// SPDX-License-Identifier: MIT
#include "layout/sheet/strips.hpp"

#include "layout/block/spread.hpp"
#include "layout/sheet/strip_cuts.hpp"
#include "layout/text/emphasis.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::layout {

namespace {

// Across the strip from its left edge [mm].
constexpr Millimetres small_tick = 5.0_mm;
constexpr Millimetres long_tick = 8.0_mm;
constexpr Millimetres figure_at = 9.5_mm;
constexpr Millimetres strong_tick = 19.0_mm;
constexpr Millimetres label_at = 20.5_mm;
constexpr Millimetres title_base = strip_width - 2.0_mm;
constexpr Millimetres title_room = 6.0_mm;

constexpr Millimetres pad = 1.5_mm;

PlacedLine edge(Millimetres x1, Millimetres y1, Millimetres x2, Millimetres y2) {
    PlacedLine made = line(x1, y1, x2, y2, rule_pt);
    made.role = Role::cut_mark;
    return made;
}

PlacedLine tick(Millimetres y, Millimetres length, Points width_pt) {
    PlacedLine made = line(0.0_mm, y, length, y, width_pt);
    made.role = Role::ruler_tick;
    return made;
}

class PiecePlan {
  public:
    PiecePlan(const card::Strip& strip, const BlockContext& setting, const Stretch& stretch)
        : strip_(strip), setting_(setting), stretch_(stretch), height_(stretch.to - stretch.from + stretch.head) {}

    Fragment draw();
    Millimetres too_tight() const { return too_tight_; }

  private:
    Millimetres y(Millimetres at) const { return height_ - (at - stretch_.from); }
    bool here(Millimetres at) const { return at > stretch_.from && at <= stretch_.to; }
    bool figure_has_room(const card::Strip::Mark& mark) const;
    TextLine figure_of(const card::Strip::Mark& mark, const TextStyle& style) const;
    void place_marks(Fragment& made) const;
    void place_labels(Fragment& made);
    void place_title(Fragment& made) const;

    const card::Strip& strip_;
    const BlockContext& setting_;
    Stretch stretch_;
    Millimetres height_;
    Millimetres too_tight_;
};

/// A figure gives way to a level that its line would cross, and to the ends of the piece; its tick stays.
bool PiecePlan::figure_has_room(const card::Strip::Mark& mark) const {
    const Millimetres at{mark.at_mm};
    const Millimetres half = 0.55 * leading(setting_.format.figure_pt);
    const bool crossed = std::any_of(strip_.marks.begin(), strip_.marks.end(), [&](const auto& other) {
        return other.strong && abs(Millimetres{other.at_mm} - at) < half;
    });
    return !crossed && at - stretch_.from > half && (stretch_.last || stretch_.to - at > half);
}

/// The figure of a mark; without its unit, which every level names, where it would reach to what stands beside it.
TextLine PiecePlan::figure_of(const card::Strip::Mark& mark, const TextStyle& style) const {
    TextLine whole = one_line(mark.label, style, setting_.measure);
    const std::size_t unit = mark.label.rfind("\u00A0");
    return whole.width <= strong_tick - figure_at || unit == std::string::npos
               ? whole
               : one_line(mark.label.substr(0, unit), style, setting_.measure);
}

void PiecePlan::place_marks(Fragment& made) const {
    TextStyle style = figure_style(setting_);
    style.role = Role::ruler_tick;
    for (const auto& mark : strip_.marks) {
        const Millimetres at{mark.at_mm};
        if (!here(at)) {
            continue;
        }
        const Millimetres level = y(at);
        made.items.emplace_back(tick(level,
                                     mark.strong          ? strong_tick
                                     : mark.label.empty() ? small_tick
                                                          : long_tick,
                                     mark.strong ? heavy_pt : rule_pt));
        if (!mark.strong && !mark.label.empty() && figure_has_room(mark)) {
            place(made.items, figure_of(mark, style), figure_at, level + 0.5 * cap_height(style.size_pt), style);
        }
    }
}

void PiecePlan::place_labels(Fragment& made) {
    TextStyle style = body_style(setting_);
    style.role = Role::ruler_tick;
    const Millimetres width = strip_width - title_room - label_at;
    struct Label {
        std::vector<TextLine> lines;
        Millimetres at;  // from the top
        bool level = true;
    };
    std::vector<Label> labels;
    std::size_t most_lines = 1;
    const auto add = [&](const card::Text& text, Millimetres at, bool level) {
        if (!text.empty()) {
            labels.push_back({break_lines(text, style, width, setting_.measure), at, level});
            most_lines = std::max(most_lines, labels.back().lines.size());
        }
    };
    for (auto mark = strip_.marks.rbegin(); mark != strip_.marks.rend(); ++mark) {
        if (mark->strong && here(Millimetres{mark->at_mm})) {
            add(mark->label, y(Millimetres{mark->at_mm}), true);
        }
    }
    add(stretch_.first ? strip_.foot_label : strip_.joint_upper, height_, false);
    const Millimetres slot = lines_height(most_lines, style.size_pt) + 1.0_mm;
    std::vector<Millimetres> wanted;
    for (const auto& label : labels) {
        wanted.push_back(label.at);
    }
    const Millimetres top = stretch_.last ? 0.5_mm : stretch_.head + 0.5_mm;
    const Spread spread = spread_apart(wanted, slot, top + 0.5 * slot, height_ - 0.5 * slot);
    too_tight_ = std::max(0.0_mm, spread.missing);
    for (std::size_t i = 0; i < labels.size(); ++i) {
        const Millimetres text_height = lines_height(labels[i].lines.size(), style.size_pt);
        Millimetres baseline = spread.at[i] - 0.5 * text_height + ascent(style.size_pt);
        for (const auto& one : labels[i].lines) {
            place(made.items, one, label_at, baseline, style);
            baseline += leading(style.size_pt);
        }
        if (labels[i].level) {
            PlacedLine leader = line(strong_tick, labels[i].at, label_at - 0.5_mm, spread.at[i], hair_pt);
            leader.role = Role::ruler_tick;
            made.items.emplace_back(leader);
        }
    }
}

void PiecePlan::place_title(Fragment& made) const {
    TextStyle style = body_style(setting_);
    style.role = Role::ruler_tick;
    const Millimetres room = height_ - (stretch_.last ? 0.0_mm : stretch_.head) - 2.0 * pad;
    const auto fits = [&](const card::Text& shown) { return one_line(shown, style, setting_.measure).width <= room; };
    card::Text fitting = strip_.title;
    if (!fits(fitting)) {  // a mark of emphasis would be cut in two
        fitting = card::plain(
            shortened(unmarked(strip_.title), [&](const std::string& shown) { return fits(card::plain(shown)); }));
    }
    std::vector<Item> items;
    place(items, one_line(fitting, style, setting_.measure), pad, title_base, style);
    for (auto& item : items) {
        made.items.push_back(turned(std::move(item), height_));  // runs up the strip
    }
}

Fragment PiecePlan::draw() {
    Fragment made;
    made.height = height_;
    made.group.tag = Tag::figure;
    made.items.emplace_back(edge(0.0_mm, 0.0_mm, 0.0_mm, height_));
    made.items.emplace_back(edge(strip_width, 0.0_mm, strip_width, height_));
    made.items.emplace_back(edge(0.0_mm, 0.0_mm, strip_width, 0.0_mm));
    made.items.emplace_back(edge(0.0_mm, height_, strip_width, height_));
    place_marks(made);
    place_labels(made);
    place_title(made);
    if (!stretch_.last) {
        PlacedLine joint = line(0.0_mm, stretch_.head, strip_width, stretch_.head, rule_pt);
        joint.dash_mm = {1.5_mm, 1.0_mm};
        joint.role = Role::ruler_tick;
        made.items.emplace_back(joint);
        TextStyle style = body_style(setting_);
        style.role = Role::ruler_tick;
        const Fragment words = paragraph(strip_.joint_lower, style, strip_width - 2.0 * pad, setting_.measure);
        too_tight_ = std::max(too_tight_, words.height + 2.0_mm - stretch_.head);
        put(made, words, pad, 0.5 * (stretch_.head - words.height));
    }
    return made;
}

}  // namespace

StripPieces strip_pieces(const card::Strip& strip, const BlockContext& setting, Millimetres room) {
    StripPieces made;
    for (const Stretch& stretch : stretches(strip, room)) {
        PiecePlan plan(strip, setting, stretch);
        made.pieces.push_back(plan.draw());
        made.pieces.back().group.alt = described(strip);
        made.too_tight = std::max(made.too_tight, plan.too_tight());
    }
    return made;
}

std::string described(const card::Strip& strip) {
    std::string text = unmarked(strip.title);
    for (const auto& mark : strip.marks) {
        if (mark.strong) {
            text += fmt::format("; {:.1f} mm: {}", mark.at_mm, unmarked(mark.label));
        }
    }
    return text;
}

}  // namespace holdwater::layout
