// SPDX-License-Identifier: MIT
#include "layout/sheet/nomogram.hpp"

#include <algorithm>

namespace holdwater::layout {

namespace {

constexpr Millimetres scale_tick = 1.5_mm;  // to each side of its scale
constexpr Millimetres scale_small_tick = 0.8_mm;
constexpr Millimetres scale_label_gap = 0.8_mm;
constexpr Millimetres scale_name_width = 24.0_mm;
constexpr Millimetres below_scale_names = 3.0_mm;

}  // namespace

Fragment nomogram(const card::Nomogram& block, const BlockContext& setting) {
    const TextStyle words = body_style(setting);
    TextStyle strong = words;
    strong.face = Weight::bold;
    TextStyle small = words;
    small.size_pt = setting.format.small_pt;
    Fragment made;
    made.group = {Tag::figure, false, block.alt};
    // The labels of the last scale stand beyond it.
    Millimetres beyond;
    Millimetres names;
    std::vector<Fragment> heads;
    for (const auto& scale : block.scales) {
        heads.push_back(paragraph(scale.name, strong, scale_name_width, setting.measure));
        names = std::max(names, heads.back().height);
        made.too_wide = std::max(made.too_wide, heads.back().too_wide);
        if (scale.across > 0.99) {
            for (const auto& tick : scale.ticks) {
                beyond = std::max(beyond, one_line(tick.label, small, setting.measure).width);
            }
        }
    }
    const Millimetres left = scale_tick;
    const Millimetres plot = setting.width - left - std::max(beyond + scale_tick + scale_label_gap, scale_name_width);
    const Millimetres top = names + below_scale_names;
    const Millimetres height{block.height_mm};
    const auto x_of = [&](double across) { return left + across * plot; };
    const auto y_of = [&](double at) { return top + (1.0 - at) * height; };
    for (const auto& thread : block.threads) {
        PlacedLine dashed = line(x_of(block.scales.at(thread.from).across), y_of(thread.from_at),
                                 x_of(block.scales.at(thread.to).across), y_of(thread.to_at), rule_pt);
        dashed.dash_mm = {2.0_mm, 1.2_mm};
        made.items.emplace_back(dashed);
    }
    for (std::size_t i = 0; i < block.scales.size(); ++i) {
        const auto& scale = block.scales[i];
        const Millimetres x = x_of(scale.across);
        put(made, heads[i], x - scale_tick, names - heads[i].height);
        made.items.emplace_back(line(x, y_of(1.0), x, y_of(0.0), rule_pt));
        for (const auto& tick : scale.ticks) {
            const Millimetres y = y_of(tick.at);
            const Millimetres half = tick.label.empty() ? scale_small_tick : scale_tick;
            made.items.emplace_back(line(x - half, y, x + half, y, tick.label.empty() ? hair_pt : rule_pt));
            if (tick.label.empty()) {
                continue;
            }
            const TextLine label = one_line(tick.label, small, setting.measure);
            const Millimetres at = x + scale_tick + scale_label_gap;
            const Millimetres pad = 0.3_mm;
            const Millimetres baseline = y + 0.5 * cap_height(small.size_pt);
            // On a white plate, since threads run through.
            const Millimetres up = ascent(small.size_pt) + 0.2_mm;
            made.items.emplace_back(filled_box(at - pad, baseline - up, label.width + 2.0 * pad,
                                               up + descent(small.size_pt) + 0.2_mm, 1.0));
            place(made.items, label, at, baseline, small);
        }
    }
    made.height = top + height + 0.5 * lines_height(1, small.size_pt);
    return made;
}

}  // namespace holdwater::layout
