// SPDX-License-Identifier: MIT
#include "layout/block/blocks.hpp"
#include "layout/block/curve_parts.hpp"

#include <algorithm>
#include <functional>
#include <utility>

namespace holdwater::layout {

namespace {

const Millimetres inset = 0.5 * em(hair_pt);  // so that the outline of a sample stays in its line

struct Entry {
    card::Text name;
    std::function<void(std::vector<Item>&, Millimetres x, Millimetres middle)> sample;
};

const card::Text& either(const card::Text& given, const card::Text& own) {
    return given.empty() ? own : given;
}

std::vector<Entry> entries_of(const card::Curve& block, const BlockContext& setting, Millimetres width,
                              Millimetres height) {
    std::vector<Entry> entries;
    if (!block.likely.empty()) {
        entries.push_back({either(block.likely_label, setting.phrases.likely),
                           [width](std::vector<Item>& items, Millimetres x, Millimetres middle) {
                               items.emplace_back(line(x, middle, x + width, middle, heavy_pt));
                           }});
    }
    if (!block.low.empty() && !block.high.empty()) {
        entries.push_back({either(block.band_label, setting.phrases.range),
                           [width, height](std::vector<Item>& items, Millimetres x, Millimetres middle) {
                               PlacedBox swatch = filled_box(x + inset, middle - 0.5 * height, width - 2.0 * inset,
                                                             height, curve_band_grey);
                               swatch.stroke_pt = hair_pt;
                               items.emplace_back(swatch);
                           }});
    }
    if (!block.second.empty()) {
        entries.push_back({either(block.second_label, setting.phrases.second),
                           [width](std::vector<Item>& items, Millimetres x, Millimetres middle) {
                               PlacedLine dashes = line(x, middle, x + width, middle, rule_pt);
                               dashes.dash_mm = curve_second_dash;
                               items.emplace_back(dashes);
                           }});
    }
    if (!block.marks.empty()) {
        const Millimetres radius = 0.3 * height;
        entries.push_back({either(block.marks_label, setting.phrases.reading),
                           [width, radius](std::vector<Item>& items, Millimetres x, Millimetres middle) {
                               items.emplace_back(curve_mark(x + 0.5 * width, middle, radius));
                           }});
    }
    if (!block.gaps.empty()) {
        entries.push_back({either(block.gaps_label, setting.phrases.no_reading),
                           [width, height](std::vector<Item>& items, Millimetres x, Millimetres middle) {
                               place_hatch(items, x + inset, middle - 0.5 * height, x + width - inset,
                                           middle + 0.5 * height, 0.5 * height);
                           }});
    }
    return entries;
}

}  // namespace

CurveKey curve_key(const card::Curve& block, const BlockContext& setting, Millimetres width) {
    const TextStyle style = body_style(setting);
    const Millimetres height = cap_height(style.size_pt);
    const Millimetres sample = setting.scaled(6.0_mm);
    const Millimetres gap = setting.scaled(1.4_mm);    // from a sample to its name
    const Millimetres apart = setting.scaled(4.0_mm);  // from a name to the next sample
    CurveKey key;
    Millimetres x;
    std::size_t row = 0;
    for (const Entry& entry : entries_of(block, setting, sample, height)) {
        const TextLine name = one_line(entry.name, style, setting.measure);
        const Millimetres wide = sample + gap + name.width;
        if (x > 0.0_mm && x + apart + wide > width) {
            x = 0.0_mm;
            ++row;
        } else if (x > 0.0_mm) {
            x += apart;
        }
        const Millimetres baseline = ascent(style.size_pt) + static_cast<double>(row) * leading(style.size_pt);
        entry.sample(key.fragment.items, x, baseline - 0.5 * height);
        place(key.fragment.items, name, x + sample + gap, baseline, style);
        x += wide;
        key.width = std::max(key.width, x);
    }
    key.fragment.too_wide = std::max(0.0_mm, key.width - setting.width);
    key.fragment.height = lines_height(row + 1, style.size_pt);
    return key;
}

}  // namespace holdwater::layout
