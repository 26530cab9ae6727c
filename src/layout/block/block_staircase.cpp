// SPDX-License-Identifier: MIT
// Thickness steps: bars of true length, along the card's longer side. Nothing stands between two of them to be judged.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::layout {

namespace {

/// The bars as they lie: length to the right, one under the other.
class Stairs {
  public:
    /// Bars up to `longest`, words up to `room` from their base; `most`: bars that have room, the black one counted.
    Stairs(const card::Staircase& block, const BlockContext& setting, Millimetres longest, Millimetres room,
           Millimetres across, std::size_t most)
        : block_(block), setting_(setting), longest_(longest), room_(room), across_(across) {
        for (const auto& step : block.steps) {
            if (Millimetres{step.mm} <= longest) {
                shown_.push_back(&step);
            }
        }
        all_ = shown_.size() == block.steps.size();
        // The thinnest go first: their pieces are done in the time of the next.
        while (shown_.size() + 1 > most && shown_.size() > 1) {
            shown_.erase(shown_.begin() + (shown_.front()->marked ? 1 : 0));
        }
    }

    Fragment draw() const;
    const std::vector<const card::Staircase::Step*>& shown() const { return shown_; }
    /// How far a bar with its words comes from the base.
    Millimetres reach(const card::Staircase::Step& step) const;

  private:
    TextStyle style(bool on_black) const {
        TextStyle made = figure_style(setting_);
        made.role = Role::ruler_tick;
        if (on_black) {
            made.grey = 1.0;
            made.quiet_units = false;
        }
        return made;
    }
    struct Words {
        Millimetres y;  // of the bar
        Millimetres length;
        Millimetres high;
    };
    /// In the bar where it is long enough for all, else the time beyond its end, else both.
    void place_words(Fragment& made, const card::Staircase::Step& step, const Words& at) const;

    const card::Staircase& block_;
    const BlockContext& setting_;
    Millimetres longest_;
    Millimetres room_;
    Millimetres across_;  // of a bar with the air below it
    std::vector<const card::Staircase::Step*> shown_;
    bool all_ = true;
};

void Stairs::place_words(Fragment& made, const card::Staircase::Step& step, const Words& at) const {
    const Millimetres pad = setting_.scaled(1.2_mm);
    const TextStyle how = style(false);
    const TextLine size = one_line(step.size, how, setting_.measure);
    const TextLine time = one_line(step.time, how, setting_.measure);
    const Millimetres line = leading(setting_.format.figure_pt);
    const Millimetres middle = at.y + 0.5 * (at.high + cap_height(how.size_pt));
    const bool two_lines = at.high > 2.0 * line;
    if (two_lines) {
        const Millimetres widest = std::max(size.width, time.width);
        const Millimetres from = widest + 2.0 * pad <= at.length ? pad : at.length + pad;
        place(made.items, size, from, middle - 0.5 * line, how);
        place(made.items, time, from, middle + 0.5 * line, how);
        made.too_wide = std::max(made.too_wide, from + widest - room_ - 1e-6_mm);
        return;
    }
    const bool both = size.width + time.width + 4.0 * pad <= at.length;
    const bool one = size.width + 2.0 * pad <= at.length;
    const Millimetres size_at = one ? pad : at.length + pad;
    const Millimetres time_at = both  ? size_at + size.width + 2.0 * pad
                                : one ? at.length + pad
                                      : size_at + size.width + 2.0 * pad;
    place(made.items, size, size_at, middle, how);
    place(made.items, time, time_at, middle, how);
    made.too_wide = std::max(made.too_wide, time_at + time.width - room_ - 1e-6_mm);
}

Millimetres Stairs::reach(const card::Staircase::Step& step) const {
    Fragment alone;
    place_words(alone, step, {0.0_mm, Millimetres{step.mm}, across_ - setting_.scaled(0.9_mm)});
    Millimetres far{step.mm};
    for (const Item& item : alone.items) {
        if (const PlacedText* text = as_text(item)) {
            far = std::max(far, text->x + text->width);
        }
    }
    return far;
}

Fragment Stairs::draw() const {
    Fragment made;
    const Millimetres air = setting_.scaled(0.9_mm);
    const Millimetres high = across_ - air;
    Millimetres y;
    for (const auto* step : shown_) {
        const Millimetres length{step->mm};
        PlacedBox bar =
            step->marked ? frame(0.0_mm, y, length, high, heavy_pt) : frame(0.0_mm, y, length, high, rule_pt);
        bar.role = Role::ruler_tick;
        made.items.emplace_back(bar);
        place_words(made, *step, {y, length, high});
        y += across_;
    }
    // Behind the last a black bar as long: whatever is longer than that.
    const card::Text& last = all_ ? block_.too_thick : setting_.phrases.longer;
    const Millimetres length = shown_.empty() ? 0.5 * longest_ : Millimetres{shown_.back()->mm};
    PlacedBox bar = filled_box(0.0_mm, y, length, high);
    bar.role = Role::ruler_tick;
    made.items.emplace_back(bar);
    // In it where it has room, else behind its end.
    const Millimetres pad = setting_.scaled(1.2_mm);
    const Millimetres step = leading(setting_.format.figure_pt);
    const auto lines = break_lines(last, style(true), std::max(length - 2.0 * pad, 1.0_mm), setting_.measure);
    const bool inside =
        static_cast<double>(lines.size()) * step <= high + 1e-6_mm &&
        std::all_of(lines.begin(), lines.end(), [&](const TextLine& one) { return one.width + 2.0 * pad <= length; });
    if (inside) {
        Millimetres baseline = y + 0.5 * (high + cap_height(setting_.format.figure_pt)) -
                               0.5 * step * static_cast<double>(lines.size() - 1);
        for (const TextLine& one : lines) {
            place(made.items, one, pad, baseline, style(true));
            baseline += step;
        }
    } else {
        const TextLine words = one_line(last, style(false), setting_.measure);
        place(made.items, words, length + pad, y + 0.5 * (high + cap_height(setting_.format.figure_pt)), style(false));
        made.too_wide = std::max(made.too_wide, length + pad + words.width - room_ - 1e-6_mm);
    }
    made.height = y + high;
    return made;
}

/// Share of the card's height that such a block may take: head and foot of the face have the rest.
constexpr double most_height = 0.72;

/// Standing bars, the title in the corner above the shorter ones; the thickest go where they leave it no room.
Fragment standing(const card::Staircase& block, const BlockContext& setting) {
    const Millimetres budget = most_height * setting.format.height;
    const Millimetres across = 2.0 * leading(setting.format.figure_pt) + setting.scaled(2.4_mm);
    const Millimetres air = setting.scaled(2.0_mm);
    const auto most = static_cast<std::size_t>(std::floor(setting.width / across));
    for (Millimetres longest = budget;;) {
        const Stairs stairs(block, setting, longest, budget, across, most);
        Fragment lying = stairs.draw();
        Millimetres highest;
        for (const auto* step : stairs.shown()) {
            highest = std::max(highest, Millimetres{step->mm});
        }
        // The bars end at the right edge; what they leave free at the left is for the words as well. As wide as so many
        // bars whose tops leave room for the words in that width.
        const Millimetres left = std::max(0.0_mm, setting.width - lying.height);
        Fragment title = paragraph(block.title, body_style(setting), setting.width, setting.measure);
        Millimetres beyond;  // by which words of a bar end above the highest
        for (const auto* step : stairs.shown()) {
            beyond = std::max(beyond, stairs.reach(*step) - highest);
        }
        Millimetres above = title.height + air + beyond;
        Millimetres reach;  // of the bars below the words
        for (std::size_t bars = 0; bars <= stairs.shown().size(); ++bars) {
            reach = std::max(reach, bars == 0 ? 0.0_mm : stairs.reach(*stairs.shown()[bars - 1]));
            const Millimetres width = left + across * static_cast<double>(bars) - air;
            if (width < setting.scaled(8.0_mm)) {
                continue;
            }
            Fragment narrow = paragraph(block.title, body_style(setting), width, setting.measure);
            const Millimetres need = std::max(beyond, narrow.height + air - (highest - reach));
            if (need < above && narrow.too_wide <= 0.0_mm) {
                above = need;
                title = std::move(narrow);
            }
        }
        if (above + highest > budget && stairs.shown().size() > 2) {
            longest = highest - 0.1_mm;
            continue;
        }
        Fragment made;
        put(made, title, 0.0_mm, 0.0_mm);
        for (Item& item : lying.items) {
            made.items.push_back(moved(turned(std::move(item), highest), left, above));
        }
        made.height = above + highest;
        made.too_wide = std::max({made.too_wide, lying.too_wide, lying.height - setting.width - 1e-6_mm});
        return made;
    }
}

/// Lying bars under their title, as many as there is room for.
Fragment lying(const card::Staircase& block, const BlockContext& setting) {
    const Millimetres budget = most_height * setting.format.height - setting.scaled(10.0_mm);
    const Millimetres across =
        leading(setting.format.figure_pt) + setting.scaled(0.9_mm) + setting.between(1.2_mm, 3.0_mm);
    const Fragment title = paragraph(block.title, body_style(setting), setting.width, setting.measure);
    const Millimetres top = title.height + setting.scaled(2.0_mm);
    const auto most = std::max<std::size_t>(2, static_cast<std::size_t>(std::max(0.0_mm, budget - top) / across));
    const Fragment bars = Stairs(block, setting, setting.width, setting.width, across, most).draw();
    Fragment made;
    put(made, title, 0.0_mm, 0.0_mm);
    put(made, bars, 0.0_mm, top);
    made.height = top + bars.height;
    return made;
}

}  // namespace

Fragment staircase(const card::Staircase& block, const BlockContext& setting) {
    double need = 0.0;
    for (const auto& step : block.steps) {
        need = std::max(need, step.mm);
    }
    const bool upright = Millimetres{need} > setting.width && setting.format.height > setting.format.width;
    Fragment made = upright ? standing(block, setting) : lying(block, setting);
    made.group = {Tag::figure, false, described(block)};
    return made;
}

}  // namespace holdwater::layout
