// SPDX-License-Identifier: MIT
// A cooling curve: the likely line in its band, and the floor it must not cross.
#include "layout/blocks.hpp"

#include <algorithm>
#include <limits>
#include <utility>

namespace holdwater::layout {

namespace {

constexpr double band_grey = 0.85;

struct Range {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    void take(double value) {
        low = std::min(low, value);
        high = std::max(high, value);
    }
    double span() const { return std::max(high - low, 1e-9); }
};

class CurvePlan {
  public:
    CurvePlan(const card::Curve& block, const Setting& setting) : block_(block), setting_(setting) { take_ranges(); }

    Fragment draw();

  private:
    using Points = std::vector<card::Curve::Point>;

    void take_ranges();
    void place_axes(Fragment& made) const;
    void place_lines(Fragment& made) const;
    void place_floor_label(Fragment& made) const;
    std::pair<Fragment, double> key() const;  // and its width
    double x(double value) const { return left_ + (value - xs_.low) / xs_.span() * (right_ - left_); }
    double y(double value) const { return bottom_ - (value - ys_.low) / ys_.span() * (bottom_ - top_); }
    /// True if some line or the band comes into the box.
    bool taken(double x1, double y1, double x2, double y2) const;

    const card::Curve& block_;
    const Setting& setting_;
    Range xs_;
    Range ys_;
    double left_ = 0.0;
    double right_ = 0.0;
    double top_ = 0.0;
    double bottom_ = 0.0;
};

void CurvePlan::take_ranges() {
    for (const auto* points : {&block_.likely, &block_.low, &block_.high}) {
        for (const auto& point : *points) {
            xs_.take(point.x);
            ys_.take(point.y);
        }
    }
    for (const auto& label : block_.x_labels) {
        xs_.take(label.at);
    }
    for (const auto& label : block_.y_labels) {
        ys_.take(label.at);
    }
    ys_.take(block_.floor);
    // Air above and below the outermost thing.
    const double air = 0.06 * ys_.span();
    ys_.low -= air;
    ys_.high += 0.5 * air;
}

bool CurvePlan::taken(double x1, double y1, double x2, double y2) const {
    const auto crosses = [&](const Points& points) {
        for (std::size_t i = 1; i < points.size(); ++i) {
            const double ax = x(points[i - 1].x);
            const double bx = x(points[i].x);
            if (bx < x1 || ax > x2) {
                continue;
            }
            const double ay = y(points[i - 1].y);
            const double by = y(points[i].y);
            if (std::max(ay, by) >= y1 && std::min(ay, by) <= y2) {
                return true;
            }
        }
        return false;
    };
    return crosses(block_.likely) || crosses(block_.low) || crosses(block_.high);
}

void CurvePlan::place_axes(Fragment& made) const {
    TextStyle style = body_style(setting_);
    for (const auto& label : block_.y_labels) {
        const TextLine text = one_line(label.text, style, setting_.measure);
        const double at = y(label.at);
        place(made.items, text, left_ - setting_.scaled(1.6) - text.width, at + 0.5 * cap_height(style.size_pt), style);
        PlacedLine grid = line(left_, at, right_, at, hair_pt);
        grid.dash_mm = {0.3, 1.2};
        made.items.emplace_back(grid);
    }
    double next = -std::numeric_limits<double>::infinity();
    const double baseline = bottom_ + setting_.scaled(1.8) + ascent(style.size_pt);
    for (const auto& label : block_.x_labels) {
        const TextLine text = one_line(label.text, style, setting_.measure);
        const double at = x(label.at);
        made.items.emplace_back(line(at, bottom_, at, bottom_ + setting_.scaled(1.2), rule_pt));
        const double start = std::min(at - 0.5 * text.width, setting_.width - text.width);
        if (start >= next) {  // a label that would touch its neighbour leaves its tick bare
            place(made.items, text, start, baseline, style);
            next = start + text.width + setting_.scaled(1.5);
        }
    }
    made.items.emplace_back(line(left_, top_, left_, bottom_, rule_pt));
    made.items.emplace_back(line(left_, bottom_, right_, bottom_, rule_pt));
}

void CurvePlan::place_lines(Fragment& made) const {
    const auto path_of = [&](const Points& points, double stroke_pt) {
        PlacedPath path;
        for (const auto& point : points) {
            path.points.push_back({x(point.x), y(point.y)});
        }
        path.stroke_pt = stroke_pt;
        return path;
    };
    if (!block_.low.empty() && !block_.high.empty()) {
        PlacedPath band = path_of(block_.high, 0.0);
        for (auto point = block_.low.rbegin(); point != block_.low.rend(); ++point) {
            band.points.push_back({x(point->x), y(point->y)});
        }
        band.closed = true;
        band.filled = true;
        band.fill_grey = band_grey;
        made.items.emplace_back(std::move(band));
        made.items.emplace_back(path_of(block_.low, hair_pt));
        made.items.emplace_back(path_of(block_.high, hair_pt));
    }
    made.items.emplace_back(path_of(block_.likely, heavy_pt));
    PlacedLine floor = line(left_, y(block_.floor), right_, y(block_.floor), heavy_pt);
    floor.dash_mm = {2.6, 1.3};
    made.items.emplace_back(floor);
}

void CurvePlan::place_floor_label(Fragment& made) const {
    if (block_.floor_label.empty()) {
        return;
    }
    TextStyle style = figure_style(setting_);
    style.role = Role::paragraph;
    const TextLine text = one_line(block_.floor_label, style, setting_.measure);
    const double pad = setting_.scaled(0.8);
    const double floor = y(block_.floor);
    const double above = floor - setting_.scaled(1.1) - descent(style.size_pt);  // baselines
    const double below = floor + setting_.scaled(1.3) + ascent(style.size_pt);
    struct Place {
        double x;
        double baseline;
    };
    const double start = left_ + setting_.scaled(1.6);
    const double end = right_ - text.width - setting_.scaled(0.8);
    std::vector<Place> places;
    for (const double baseline : {above, below}) {
        for (const double at : {start, 0.5 * (start + end), end}) {
            places.push_back({at, baseline});
        }
    }
    Place best = places[3];
    for (const auto& one : places) {
        const double y1 = one.baseline - ascent(style.size_pt);
        const double y2 = one.baseline + descent(style.size_pt);
        if (y1 > top_ && y2 < bottom_ - 0.3 && !taken(one.x - pad, y1 - 0.3, one.x + text.width + pad, y2)) {
            best = one;
            break;
        }
    }
    made.items.emplace_back(filled_box(best.x - pad, best.baseline - ascent(style.size_pt) - 0.2,
                                       text.width + 2.0 * pad, ascent(style.size_pt) + descent(style.size_pt) + 0.2,
                                       1.0));
    place(made.items, text, best.x, best.baseline, style);
}

std::pair<Fragment, double> CurvePlan::key() const {
    const TextStyle style = body_style(setting_);
    const double sample = setting_.scaled(6.0);
    const double gap = setting_.scaled(1.4);
    const double middle = ascent(style.size_pt) - 0.5 * cap_height(style.size_pt);
    Fragment made;
    const TextLine likely = one_line(setting_.phrases.likely, style, setting_.measure);
    made.items.emplace_back(line(0.0, middle, sample, middle, heavy_pt));
    place(made.items, likely, sample + gap, ascent(style.size_pt), style);
    made.height = lines_height(1, style.size_pt);
    double width = sample + gap + likely.width;
    if (!block_.low.empty()) {
        const TextLine range = one_line(setting_.phrases.range, style, setting_.measure);
        const double at = width + setting_.scaled(4.0);
        PlacedBox swatch =
            filled_box(at, middle - 0.5 * cap_height(style.size_pt), sample, cap_height(style.size_pt), band_grey);
        swatch.stroke_pt = hair_pt;
        made.items.emplace_back(swatch);
        place(made.items, range, at + sample + gap, ascent(style.size_pt), style);
        width = at + sample + gap + range.width;
    }
    return {made, width};
}

Fragment CurvePlan::draw() {
    constexpr double least_height = 20.0;  // mm of the plot, for a 10 pt body
    constexpr double roomy_height = 62.0;
    const TextStyle style = body_style(setting_);
    Fragment made;
    double cursor = 0.0;
    if (!block_.title.empty()) {
        TextStyle bold = style;
        bold.size_pt = setting_.format.figure_pt;
        bold.face = Face::bold;
        bold.quiet_units = false;
        const Fragment title = paragraph(block_.title, bold, setting_.width, setting_.measure);
        put(made, title, 0.0, 0.0);
        cursor = title.height + setting_.scaled(1.4);
    }
    // What stands upright and what the lines mean, in one line where there is room.
    const TextLine upright = one_line(block_.y_title, style, setting_.measure);
    place(made.items, upright, 0.0, cursor + ascent(style.size_pt), style);
    const auto [legend, legend_width] = key();
    if (upright.width + setting_.scaled(4.0) + legend_width > setting_.width) {
        cursor += leading(style.size_pt);
        put(made, legend, 0.0, cursor);
    } else {
        put(made, legend, setting_.width - legend_width, cursor);
    }
    cursor += legend.height + setting_.scaled(1.2);
    double labels = 0.0;
    for (const auto& label : block_.y_labels) {
        labels = std::max(labels, one_line(label.text, style, setting_.measure).width);
    }
    left_ = labels + setting_.scaled(1.6);
    right_ = setting_.width - setting_.scaled(1.0);
    top_ = cursor;
    bottom_ = top_ + setting_.between(setting_.scaled(least_height), setting_.scaled(roomy_height));

    // Band first, grid over it, lines last; labels stand on white where nothing else runs.
    Fragment lines;
    place_lines(lines);
    place_axes(made);
    put(made, lines, 0.0, 0.0);
    place_floor_label(made);
    cursor = bottom_ + setting_.scaled(1.8) + lines_height(1, style.size_pt);
    if (!block_.x_title.empty()) {
        const TextLine text = one_line(block_.x_title, style, setting_.measure);
        cursor += setting_.scaled(0.4);
        place(made.items, text, std::max(left_, right_ - text.width), cursor + ascent(style.size_pt), style);
        made.too_wide = std::max(made.too_wide, text.width - setting_.width);
        cursor += lines_height(1, style.size_pt);
    }
    made.height = cursor;
    return made;
}

}  // namespace

Fragment curve(const card::Curve& block, const Setting& setting) {
    return CurvePlan(block, setting).draw();
}

}  // namespace holdwater::layout
