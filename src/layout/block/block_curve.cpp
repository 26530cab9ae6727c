// SPDX-License-Identifier: MIT
// A cooling curve: the likely line in its band, the floor that it must not cross, and what was read.
#include "layout/block/blocks.hpp"
#include "layout/block/curve_parts.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <limits>

namespace holdwater::layout {

namespace {

class CurvePlan {
  public:
    CurvePlan(const card::Curve& block, const BlockContext& setting)
        : block_(block), setting_(setting), scale_(block) {}

    Fragment draw();

  private:
    Millimetres place_head(Fragment& made) const;  // returns where the plot may begin
    void place_axes(Fragment& made) const;
    void place_floor_label(Fragment& made) const;

    const card::Curve& block_;
    const BlockContext& setting_;
    CurveScale scale_;
};

Millimetres CurvePlan::place_head(Fragment& made) const {
    const TextStyle style = body_style(setting_);
    Millimetres cursor;
    if (!block_.title.empty()) {
        TextStyle bold = style;
        bold.size_pt = setting_.format.figure_pt;
        bold.face = Weight::bold;
        bold.quiet_units = false;
        const Fragment title = paragraph(block_.title, bold, setting_.width, setting_.measure);
        put(made, title, 0.0_mm, 0.0_mm);
        cursor = title.height + setting_.scaled(1.4_mm);
    }
    // What stands upright and what the lines mean, in one line where there is room.
    const TextLine upright = one_line(block_.y_title, style, setting_.measure);
    place(made.items, upright, 0.0_mm, cursor + ascent(style.size_pt), style);
    const CurveKey key = curve_key(block_, setting_, setting_.width);
    if (upright.width + setting_.scaled(4.0_mm) + key.width > setting_.width) {
        cursor += leading(style.size_pt);
        put(made, key.fragment, 0.0_mm, cursor);
    } else {
        put(made, key.fragment, setting_.width - key.width, cursor);
    }
    return cursor + key.fragment.height + setting_.scaled(1.2_mm);
}

void CurvePlan::place_axes(Fragment& made) const {
    const TextStyle style = body_style(setting_);
    for (const auto& label : block_.y_labels) {
        const TextLine text = one_line(label.text, style, setting_.measure);
        const Millimetres at = scale_.y(label.at);
        place(made.items, text, scale_.left - setting_.scaled(1.6_mm) - text.width,
              at + 0.5 * cap_height(style.size_pt), style);
        PlacedLine grid = line(scale_.left, at, scale_.right, at, hair_pt);
        grid.dash_mm = {0.3_mm, 1.2_mm};
        made.items.emplace_back(grid);
    }
    Millimetres next{-std::numeric_limits<double>::infinity()};
    const Millimetres baseline = scale_.bottom + setting_.scaled(1.8_mm) + ascent(style.size_pt);
    for (const auto& label : block_.x_labels) {
        const TextLine text = one_line(label.text, style, setting_.measure);
        const Millimetres at = scale_.x(label.at);
        made.items.emplace_back(line(at, scale_.bottom, at, scale_.bottom + setting_.scaled(1.2_mm), rule_pt));
        const Millimetres start = std::min(at - 0.5 * text.width, setting_.width - text.width);
        if (start >= next) {  // a label that would touch its neighbour leaves its tick bare
            place(made.items, text, start, baseline, style);
            next = start + text.width + setting_.scaled(1.5_mm);
        }
    }
    made.items.emplace_back(line(scale_.left, scale_.top, scale_.left, scale_.bottom, rule_pt));
    made.items.emplace_back(line(scale_.left, scale_.bottom, scale_.right, scale_.bottom, rule_pt));
}

void CurvePlan::place_floor_label(Fragment& made) const {
    if (block_.floor_label.empty()) {
        return;
    }
    TextStyle style = figure_style(setting_);
    style.role = Role::paragraph;
    const TextLine text = one_line(block_.floor_label, style, setting_.measure);
    const Millimetres pad = setting_.scaled(0.8_mm);
    const Millimetres floor = scale_.y(block_.floor);
    const Millimetres above = floor - setting_.scaled(1.1_mm) - descent(style.size_pt);  // baselines
    const Millimetres below = floor + setting_.scaled(1.3_mm) + ascent(style.size_pt);
    struct Place {
        Millimetres x;
        Millimetres baseline;
    };
    const Millimetres start = scale_.left + setting_.scaled(1.6_mm);
    const Millimetres end = scale_.right - text.width - setting_.scaled(0.8_mm);
    std::vector<Place> places;
    for (const Millimetres baseline : {above, below}) {
        for (const Millimetres at : {start, 0.5 * (start + end), end}) {
            places.push_back({at, baseline});
        }
    }
    // Ends and middle look best; where all of them are taken, anywhere along the floor.
    constexpr int tried = 12;
    for (const Millimetres baseline : {above, below}) {
        for (int i = 1; i < tried; ++i) {
            places.push_back({start + (end - start) * i / tried, baseline});
        }
    }
    // Where nothing else runs; else, inside the plot at least, on white over what runs there.
    const auto in_plot = [&](const Place& one) {
        return one.baseline - ascent(style.size_pt) > scale_.top &&
               one.baseline + descent(style.size_pt) < scale_.bottom - 0.3_mm;
    };
    const auto free = [&](const Place& one) {
        return in_plot(one) && !curve_takes(block_, scale_, one.x - pad, one.baseline - ascent(style.size_pt) - 0.3_mm,
                                            one.x + text.width + pad, one.baseline + descent(style.size_pt));
    };
    auto found = std::find_if(places.begin(), places.end(), free);
    found = found != places.end() ? found : std::find_if(places.begin(), places.end(), in_plot);
    const Place best = found != places.end() ? *found : places.front();
    made.items.emplace_back(filled_box(best.x - pad, best.baseline - ascent(style.size_pt) - 0.2_mm,
                                       text.width + 2.0 * pad, ascent(style.size_pt) + descent(style.size_pt) + 0.2_mm,
                                       1.0));
    place(made.items, text, best.x, best.baseline, style);
}

Fragment CurvePlan::draw() {
    constexpr Millimetres least_height = 20.0_mm;  // mm of the plot, for a 10 pt body
    constexpr Millimetres roomy_height = 62.0_mm;
    const TextStyle style = body_style(setting_);
    Fragment made;
    made.group = {Tag::figure, false, described(block_)};
    const Millimetres top = place_head(made);
    Millimetres labels;
    for (const auto& label : block_.y_labels) {
        labels = std::max(labels, one_line(label.text, style, setting_.measure).width);
    }
    scale_.set_plot(labels + setting_.scaled(1.6_mm), top, setting_.width - setting_.scaled(1.0_mm),
                    top + setting_.between(setting_.scaled(least_height), setting_.scaled(roomy_height)));

    // Grid first, lines over it; labels stand on white where nothing else runs.
    place_axes(made);
    place_curve(made.items, block_, scale_, setting_);
    place_floor_label(made);
    Millimetres cursor = scale_.bottom + setting_.scaled(1.8_mm) + lines_height(1, style.size_pt);
    if (!block_.x_title.empty()) {
        const TextLine text = one_line(block_.x_title, style, setting_.measure);
        cursor += setting_.scaled(0.4_mm);
        place(made.items, text, std::max(scale_.left, scale_.right - text.width), cursor + ascent(style.size_pt),
              style);
        made.too_wide = std::max(made.too_wide, text.width - setting_.width);
        cursor += lines_height(1, style.size_pt);
    }
    made.height = cursor;
    return made;
}

}  // namespace

Fragment curve(const card::Curve& block, const BlockContext& setting) {
    return CurvePlan(block, setting).draw();
}

}  // namespace holdwater::layout
