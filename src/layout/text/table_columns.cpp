// SPDX-License-Identifier: MIT
#include "layout/text/table_columns.hpp"

#include "layout/block/blocks.hpp"

#include <algorithm>
#include <numeric>

namespace holdwater::layout {

namespace {

bool has_digit(const card::Text& text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

}  // namespace

TextStyle table_head_style(const card::Table& block, const BlockContext& setting) {
    TextStyle style = body_style(setting);
    style.role = Role::table;
    const bool figures = std::any_of(block.columns.begin(), block.columns.end(),
                                     [](const auto& column) { return has_digit(column.head); });
    style.size_pt = figures ? setting.format.figure_pt : setting.format.body_pt;
    return style;
}

bool keeps_figures(const card::Column& column) {
    return column.align != card::Align::left;
}

TableColumns::TableColumns(const card::Table& block, const BlockContext& setting)
    : block_(block), setting_(setting), pad_(setting.scaled(1.6_mm)), plans_(block.columns.size()) {
    measure_columns();
    share_width();
}

/// Figures at their size; a column of nothing but words at the size of words.
TextStyle TableColumns::column_style(std::size_t c) const {
    TextStyle style = figure_style(setting_);
    style.face = block_.columns[c].strong ? Weight::bold : Weight::regular;
    const bool figures = std::any_of(block_.rows.begin(), block_.rows.end(),
                                     [c](const auto& row) { return c < row.size() && has_digit(row[c]); });
    if (!figures && !block_.columns[c].strong && !keeps_figures(block_.columns[c])) {
        style.size_pt = setting_.format.body_pt;
    }
    return style;
}

void TableColumns::measure_columns() {
    const Measure& measure = setting_.measure;
    for (std::size_t c = 0; c < plans_.size(); ++c) {
        const card::Column& column = block_.columns[c];
        ColumnPlan& plan = plans_[c];
        plan.style = column_style(c);
        const TextStyle& style = plan.style;
        for (const auto& row : block_.rows) {
            if (c >= row.size()) {
                continue;
            }
            if (keeps_figures(column)) {
                plan.figures.take(figure_of(row[c], style, measure));
                plan.natural = std::max(plan.natural, plan.figures.width());
                plan.least = plan.natural;
            } else {
                plan.natural = std::max(plan.natural, one_line(row[c], style, measure).width);
                plan.least = std::max(plan.least, widest_word(row[c], style, measure));
            }
        }
        // A heading may take a second line rather than widen its column much.
        const TextStyle head = table_head_style(block_, setting_);
        const Millimetres whole = one_line(column.head, head, measure).width;
        const Millimetres word = widest_word(column.head, head, measure);
        plan.natural = std::max({plan.natural, word, 0.55 * whole});
        const bool brief = whole <= setting_.scaled(15.0_mm);
        plan.least = std::max(plan.least, brief ? whole : word);
        plan.natural = std::max(plan.natural, plan.least);
        plan.snug = plan.natural <= setting_.scaled(22.0_mm) ? plan.natural : plan.least;
        plan.wanted = std::max(plan.natural, whole);
    }
}

void TableColumns::share_width() {
    if (plans_.empty()) {
        return;
    }
    constexpr Millimetres widest_gap = 18.0_mm;
    Millimetres gap = setting_.scaled(3.2_mm);
    const Millimetres room = setting_.width - 2.0 * pad_ - gap * static_cast<double>(plans_.size() - 1);
    const auto sum = [&](auto part) {
        return std::accumulate(plans_.begin(), plans_.end(), Millimetres{},
                               [&](Millimetres t, const auto& p) { return t + p.*part; });
    };
    const Millimetres natural = sum(&ColumnPlan::natural);
    const Millimetres least = sum(&ColumnPlan::least);
    Millimetres x = pad_;
    const Millimetres snug = sum(&ColumnPlan::snug);
    if (natural <= room) {
        const Millimetres wanted = sum(&ColumnPlan::wanted);
        const double share = wanted > natural ? std::min(1.0, (room - natural) / (wanted - natural)) : 0.0;
        Millimetres used;
        for (auto& plan : plans_) {
            plan.width = plan.natural + share * (plan.wanted - plan.natural);
            used += plan.width;
        }
        // The air goes between the columns, up to where the eye would lose the row.
        const double gaps = static_cast<double>(std::max<std::size_t>(1, plans_.size() - 1));
        gap += std::min((room - used) / gaps, setting_.scaled(widest_gap));
        ColumnPlan& last = plans_.back();
        if (block_.columns.back().align == card::Align::left) {
            last.width = setting_.width - pad_ - (x + used - last.width + gap * gaps);
        }
    } else {
        // The long words give way first.
        const bool keep_brief = snug <= room;
        squeezed_ = !keep_brief;
        const Millimetres from = keep_brief ? snug : least;
        const Millimetres to = keep_brief ? natural : snug;
        const double share = to > from ? std::max(0.0, (room - from) / (to - from)) : 0.0;
        for (auto& plan : plans_) {
            const Millimetres low = keep_brief ? plan.snug : plan.least;
            plan.width = low + share * ((keep_brief ? plan.natural : plan.snug) - low);
        }
        too_wide_ = std::max(0.0_mm, least - room);
    }
    for (auto& plan : plans_) {
        plan.x = x;
        x += plan.width + gap;
    }
}

}  // namespace holdwater::layout
