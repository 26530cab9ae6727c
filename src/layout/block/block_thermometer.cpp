// SPDX-License-Identifier: MIT
// The thermometer: a tube to scale at the left, its rows beside it, each led to its level.
#include "layout/block/blocks.hpp"
#include "layout/reading.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::layout {

namespace {

constexpr Millimetres tube_wide = 3.2_mm;  // for a 10 pt body, as the next
constexpr Millimetres lead_wide = 6.0_mm;  // from the tube to the readings

/// Rows one under the other; the tube comes when it is known where they stand.
class ThermometerPlan {
  public:
    ThermometerPlan(const card::Thermometer& block, const BlockContext& setting)
        : block_(block), setting_(setting), left_(setting.scaled(tube_wide + lead_wide)) {}

    Fragment draw();

  private:
    struct Level {
        double at;
        Millimetres middle;
    };

    void measure_readings();
    void add_bar(const card::Thermometer::Section& section);
    void add_heads(const card::Thermometer::Section& section);
    void add_row(const card::Thermometer::Section& section, const card::Thermometer::Row& row, bool last);
    void add_tube();
    TextStyle reading_style() const { return figure_style(setting_); }
    TextStyle cell_style() const {
        TextStyle style = body_style(setting_);
        style.role = Role::table;
        style.size_pt = setting_.format.figure_pt;
        return style;
    }
    Millimetres cells_at() const { return left_ + readings_ + setting_.scaled(2.4_mm); }
    Millimetres column(std::size_t cells) const {
        return (setting_.width - cells_at()) / static_cast<double>(std::max<std::size_t>(cells, 1));
    }

    const card::Thermometer& block_;
    const BlockContext& setting_;
    Millimetres left_;
    Millimetres readings_;
    Fragment made_;
    Millimetres y_;
    std::size_t row_ = 0;
    std::vector<Level> levels_;
};

void ThermometerPlan::measure_readings() {
    Millimetres whole;
    Millimetres word;
    for (const auto& section : block_.sections) {
        word = std::max(word, widest_word(section.left_head, body_style(setting_), setting_.measure));
        for (const auto& row : section.rows) {
            whole = std::max(whole, one_line(row.reading, reading_style(), setting_.measure).width);
            word = std::max(word, widest_word(row.reading, reading_style(), setting_.measure));
        }
    }
    std::size_t columns = 0;
    for (const auto& section : block_.sections) {
        columns = std::max(columns, section.heads.size());
    }
    const double share = columns > 2 ? 0.14 : 0.36;  // of the width, for readings
    readings_ = std::max(word, std::min(whole, share * setting_.width));
}

void ThermometerPlan::add_bar(const card::Thermometer::Section& section) {
    TextStyle style = cell_style();
    style.face = Weight::bold;
    style.grey = section.calm ? style.grey : 1.0;
    style.quiet_units = false;
    const Millimetres pad = setting_.scaled(1.6_mm);
    const Fragment words = paragraph(section.bar, style, setting_.width - left_ - 2.0 * pad, setting_.measure);
    const Millimetres height = words.height + setting_.scaled(1.8_mm);
    made_.items.emplace_back(section.calm ? frame(left_, y_, setting_.width - left_, height, rule_pt)
                                          : filled_box(left_, y_, setting_.width - left_, height));
    const std::size_t first = made_.items.size();
    put(made_, words, left_ + pad, y_ + 0.5 * (height - words.height) + 0.2_mm);
    set_cell(made_.items, first, 0);
    set_row(made_.items, first, row_++);
    levels_.push_back({section.bar_at.value_or(block_.floor), y_ + 0.5 * height});
    y_ += height + setting_.scaled(0.8_mm);
}

void ThermometerPlan::add_heads(const card::Thermometer::Section& section) {
    if (section.heads.empty() && section.left_head.empty()) {
        return;
    }
    TextStyle style = body_style(setting_);
    style.role = Role::table;
    const std::size_t first = made_.items.size();
    const Millimetres gap = setting_.scaled(1.6_mm);
    std::vector<Fragment> parts{paragraph(section.left_head, style, readings_, setting_.measure)};
    for (const card::Text& head : section.heads) {
        TextStyle head_style = style;
        if (head.find_first_of("0123456789") != std::string::npos) {
            head_style.size_pt = setting_.format.figure_pt;  // a column is chosen by it: read as well as its figures
        }
        parts.push_back(paragraph(head, head_style, column(section.heads.size()) - gap, setting_.measure));
    }
    Millimetres height;
    for (const Fragment& part : parts) {
        height = std::max(height, part.height);
    }
    for (std::size_t c = 0; c < parts.size(); ++c) {
        const std::size_t cell = made_.items.size();
        const Millimetres x = c == 0 ? left_ : cells_at() + column(section.heads.size()) * static_cast<double>(c - 1);
        put(made_, parts[c], x, y_ + height - parts[c].height);
        set_cell(made_.items, cell, c);
    }
    set_row(made_.items, first, row_++);
    y_ += height + setting_.scaled(0.7_mm);
    made_.items.emplace_back(line(left_, y_, setting_.width, y_, rule_pt));
}

void ThermometerPlan::add_row(const card::Thermometer::Section& section, const card::Thermometer::Row& row, bool last) {
    const Millimetres air = setting_.between(setting_.scaled(0.55_mm), setting_.scaled(1.9_mm));
    const Millimetres gap = setting_.scaled(1.6_mm);
    const std::size_t columns = row.cells.size() == 1 ? 1 : std::max(section.heads.size(), row.cells.size());
    std::vector<Fragment> parts{paragraph(row.reading, reading_style(), readings_, setting_.measure)};
    for (const card::Text& cell : row.cells) {
        parts.push_back(
            paragraph(cell, cell_style(), column(columns) - (columns > 1 ? gap : 0.0_mm), setting_.measure));
    }
    Millimetres height;
    for (const Fragment& part : parts) {
        height = std::max(height, part.height);
    }
    y_ += air;
    const std::size_t first = made_.items.size();
    for (std::size_t c = 0; c < parts.size(); ++c) {
        const std::size_t cell = made_.items.size();
        put(made_, parts[c], c == 0 ? left_ : cells_at() + column(columns) * static_cast<double>(c - 1),
            y_ + 0.5 * (height - parts[c].height));
        set_cell(made_.items, cell, c);
    }
    set_row(made_.items, first, row_++);
    if (!std::isnan(row.at)) {  // a row for more than one level stands beside the tube without a line to it
        levels_.push_back({row.at, y_ + 0.5 * height});
    }
    y_ += height + air;
    if (!last) {
        made_.items.emplace_back(line(left_, y_, setting_.width, y_, hair_pt));
    }
}

/// To scale from the first level to the last; black below the floor.
void ThermometerPlan::add_tube() {
    const Millimetres width = setting_.scaled(tube_wide);
    const double top = levels_.front().at;
    const double bottom = levels_.back().at;
    const Millimetres from = levels_.front().middle;
    const Millimetres to = levels_.back().middle;
    const auto y_of = [&](double at) {
        return top - bottom < 1e-9 ? from : from + (top - at) / (top - bottom) * (to - from);
    };
    const Millimetres head = setting_.scaled(1.6_mm);
    const Millimetres floor = std::clamp(y_of(block_.floor), from, to);
    const bool any_floor = block_.floor < top + 1e-9;
    if (any_floor) {
        made_.items.emplace_back(filled_box(0.0_mm, floor, width, to + head - floor));
    }
    made_.items.emplace_back(frame(0.0_mm, from - head, width, to - from + 2.0 * head, rule_pt));
    for (const Level& level : levels_) {
        const Millimetres at = y_of(level.at);
        made_.items.emplace_back(line(width, at, width + setting_.scaled(1.6_mm), at, heavy_pt));
        made_.items.emplace_back(
            line(width + setting_.scaled(1.6_mm), at, left_ - setting_.scaled(0.9_mm), level.middle, hair_pt));
    }
}

Fragment ThermometerPlan::draw() {
    made_.group.tag = Tag::table;
    made_.group.headed = true;
    measure_readings();
    for (const auto& section : block_.sections) {
        if (!section.bar.empty()) {
            add_bar(section);
        }
        add_heads(section);
        for (std::size_t i = 0; i < section.rows.size(); ++i) {
            add_row(section, section.rows[i], i + 1 == section.rows.size());
        }
        y_ += setting_.scaled(0.6_mm);
    }
    if (!levels_.empty()) {
        add_tube();
        y_ = std::max(y_, levels_.back().middle + setting_.scaled(1.6_mm));
    }
    made_.height = y_;
    return std::move(made_);
}

}  // namespace

Fragment thermometer(const card::Thermometer& block, const BlockContext& setting) {
    return ThermometerPlan(block, setting).draw();
}

}  // namespace holdwater::layout
