// SPDX-License-Identifier: MIT
// Thickness steps: bars of true length, along the card's longer side. Nothing stands between two of them to be judged.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace holdwater::layout {

namespace {

/// The share of an upright card's height that head and foot leave for bars.
constexpr double free_height = 0.7;

/// The bars as they lie: length to the right, one under the other.
class Stairs {
  public:
    /// `most`: bars that have room, the black one counted.
    Stairs(const card::Staircase& block, const BlockContext& setting, Millimetres longest, Millimetres across,
           std::size_t most)
        : block_(block), setting_(setting), longest_(longest), across_(across) {
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
    if (two_lines && std::max(size.width, time.width) + 2.0 * pad <= at.length) {
        place(made.items, size, pad, middle - 0.5 * line, how);
        place(made.items, time, pad, middle + 0.5 * line, how);
        return;
    }
    const bool both = size.width + time.width + 4.0 * pad <= at.length;
    const bool one = size.width + 2.0 * pad <= at.length;
    const Millimetres size_at = one ? pad : at.length + pad;
    const Millimetres time_at = both ? size_at + size.width + 2.0 * pad
                                : one ? at.length + pad
                                      : size_at + size.width + 2.0 * pad;
    place(made.items, size, size_at, middle, how);
    place(made.items, time, time_at, middle, how);
    made.too_wide = std::max(made.too_wide, time_at + time.width - longest_ - 1e-6_mm);
}

Fragment Stairs::draw() const {
    Fragment made;
    const Millimetres air = setting_.scaled(0.9_mm);
    const Millimetres high = across_ - air;
    Millimetres y;
    for (const auto* step : shown_) {
        const Millimetres length{step->mm};
        PlacedBox bar = step->marked ? frame(0.0_mm, y, length, high, heavy_pt)
                                     : frame(0.0_mm, y, length, high, rule_pt);
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
    const auto lines = break_lines(last, style(true), length - setting_.scaled(2.4_mm), setting_.measure);
    const Millimetres step = leading(setting_.format.figure_pt);
    Millimetres baseline = y + 0.5 * (high + cap_height(setting_.format.figure_pt)) -
                           0.5 * step * static_cast<double>(lines.size() - 1);
    for (const TextLine& one : lines) {
        place(made.items, one, setting_.scaled(1.2_mm), baseline, style(true));
        baseline += step;
        made.too_wide = std::max(made.too_wide, one.width + setting_.scaled(2.4_mm) - length - 1e-6_mm);
    }
    made.height = y + high;
    return made;
}

/// Standing bars, with the title in the corner above the shorter ones.
Fragment standing(const card::Staircase& block, const BlockContext& setting) {
    const Millimetres longest = free_height * setting.format.height;
    const Millimetres across = 2.0 * leading(setting.format.figure_pt) + setting.scaled(2.4_mm);
    const auto most = static_cast<std::size_t>(std::floor(setting.width / across));
    const Stairs stairs(block, setting, longest, across, most);
    Fragment lying = stairs.draw();
    Millimetres highest;
    for (const auto* step : stairs.shown()) {
        highest = std::max(highest, Millimetres{step->mm});
    }
    // As wide as so many bars whose tops leave room for the words in that width.
    Fragment title = paragraph(block.title, body_style(setting), setting.width, setting.measure);
    const Millimetres air = setting.scaled(2.0_mm);
    Millimetres above = title.height + air;
    // The bars end at the right edge; what they leave free at the left is for the words as well.
    const Millimetres left = std::max(0.0_mm, setting.width - lying.height);
    for (std::size_t bars = 0; bars <= stairs.shown().size(); ++bars) {
        if (left + across * static_cast<double>(bars) <= 4.0 * air) {
            continue;
        }
        Fragment narrow =
            paragraph(block.title, body_style(setting), left + across * static_cast<double>(bars) - air, setting.measure);
        const Millimetres need_above =
            std::max(0.0_mm, narrow.height + air - (highest - Millimetres{bars == 0 ? 0.0 : stairs.shown()[bars - 1]->mm}));
        if (need_above < above && narrow.too_wide <= 0.0_mm) {
            above = need_above;
            title = std::move(narrow);
        }
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

}  // namespace

Fragment staircase(const card::Staircase& block, const BlockContext& setting) {
    const Format& format = setting.format;
    double need = 0.0;
    for (const auto& step : block.steps) {
        need = std::max(need, step.mm);
    }
    Fragment made;
    if (Millimetres{need} > setting.width && format.height > format.width) {
        made = standing(block, setting);
    } else {
        constexpr double share = 0.5;  // of the card's height, for bars
        const Millimetres across =
            leading(format.figure_pt) + setting.scaled(0.9_mm) + setting.between(0.3_mm, 2.4_mm);
        const auto most = std::max<std::size_t>(2, static_cast<std::size_t>(share * format.height / across));
        const Fragment title = paragraph(block.title, body_style(setting), setting.width, setting.measure);
        const Fragment bars = Stairs(block, setting, setting.width, across, most).draw();
        put(made, title, 0.0_mm, 0.0_mm);
        const Millimetres top = title.height + setting.scaled(2.0_mm);
        put(made, bars, 0.0_mm, top);
        made.height = top + bars.height;
    }
    made.group = {Tag::figure, false, described(block)};
    return made;
}

}  // namespace holdwater::layout
