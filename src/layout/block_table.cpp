// SPDX-License-Identifier: MIT
// Tables: column widths from their content, figures in line, light rules, a heavy frame round this trip's row.
#include "layout/blocks.hpp"
#include "layout/figures.hpp"

#include <algorithm>
#include <numeric>
#include <optional>

namespace holdwater::layout {

namespace {

struct Cell {
    std::vector<TextLine> lines;  // words
    Figure figure;                // or a figure
    bool is_figure = false;
};

struct ColumnPlan {
    double natural = 0.0;
    double least = 0.0;
    double snug = 0.0;    // least, but with brief words in one line
    double wanted = 0.0;  // with its heading in one line
    double width = 0.0;
    double x = 0.0;
    FigureColumn figures;
    TextStyle style;  // of its cells
};

bool has_digit(const card::Text& text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// Headings with figures in them ("at 60 °C") are read as figures are.
TextStyle head_style(const card::Table& block, const Setting& setting) {
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

class TablePlan {
  public:
    TablePlan(const card::Table& block, const Setting& setting)
        : block_(block), setting_(setting), pad_(setting.scaled(1.6)), plans_(block.columns.size()) {
        measure_columns();
        share_width();
    }

    Fragment draw() const;

  private:
    TextStyle column_style(std::size_t c) const;
    void measure_columns();
    void share_width();
    Fragment draw_row(const std::vector<card::Text>& row) const;
    Fragment draw_heads() const;

    const card::Table& block_;
    const Setting& setting_;
    double pad_;
    std::vector<ColumnPlan> plans_;
    double too_wide_ = 0.0;
    bool squeezed_ = false;
};

/// Figures at their size; a column of nothing but words at the size of words.
TextStyle TablePlan::column_style(std::size_t c) const {
    TextStyle style = figure_style(setting_);
    style.face = block_.columns[c].strong ? Face::bold : Face::regular;
    const bool figures = std::any_of(block_.rows.begin(), block_.rows.end(),
                                     [c](const auto& row) { return c < row.size() && has_digit(row[c]); });
    if (!figures && !block_.columns[c].strong && !keeps_figures(block_.columns[c])) {
        style.size_pt = setting_.format.body_pt;
    }
    return style;
}

void TablePlan::measure_columns() {
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
        const TextStyle head = head_style(block_, setting_);
        const double whole = one_line(column.head, head, measure).width;
        const double word = widest_word(column.head, head, measure);
        plan.natural = std::max({plan.natural, word, 0.55 * whole});
        const bool brief = whole <= setting_.scaled(15.0);
        plan.least = std::max(plan.least, brief ? whole : word);
        plan.natural = std::max(plan.natural, plan.least);
        plan.snug = plan.natural <= setting_.scaled(22.0) ? plan.natural : plan.least;
        plan.wanted = std::max(plan.natural, whole);
    }
}

void TablePlan::share_width() {
    if (plans_.empty()) {
        return;
    }
    constexpr double widest_gap = 18.0;
    double gap = setting_.scaled(3.2);
    const double room = setting_.width - 2.0 * pad_ - gap * static_cast<double>(plans_.size() - 1);
    const auto sum = [&](auto part) {
        return std::accumulate(plans_.begin(), plans_.end(), 0.0, [&](double t, const auto& p) { return t + p.*part; });
    };
    const double natural = sum(&ColumnPlan::natural);
    const double least = sum(&ColumnPlan::least);
    double x = pad_;
    const double snug = sum(&ColumnPlan::snug);
    if (natural <= room) {
        const double wanted = sum(&ColumnPlan::wanted);
        const double share = wanted > natural ? std::min(1.0, (room - natural) / (wanted - natural)) : 0.0;
        double used = 0.0;
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
        const double from = keep_brief ? snug : least;
        const double to = keep_brief ? natural : snug;
        const double share = to > from ? std::max(0.0, (room - from) / (to - from)) : 0.0;
        for (auto& plan : plans_) {
            const double low = keep_brief ? plan.snug : plan.least;
            plan.width = low + share * ((keep_brief ? plan.natural : plan.snug) - low);
        }
        too_wide_ = std::max(0.0, least - room);
    }
    for (auto& plan : plans_) {
        plan.x = x;
        x += plan.width + gap;
    }
}

Fragment TablePlan::draw_heads() const {
    Fragment made;
    std::vector<std::vector<TextLine>> heads;
    double height = 0.0;
    const TextStyle style = head_style(block_, setting_);
    for (std::size_t c = 0; c < plans_.size(); ++c) {
        heads.push_back(break_lines(block_.columns[c].head, style, plans_[c].width, setting_.measure));
        height = std::max(height, lines_height(heads.back().size(), style.size_pt));
    }
    for (std::size_t c = 0; c < plans_.size(); ++c) {
        const auto align = block_.columns[c].align;
        double baseline = height - descent(style.size_pt) -
                          static_cast<double>(heads[c].empty() ? 0 : heads[c].size() - 1) * leading(style.size_pt);
        for (const auto& one : heads[c]) {
            const double spare = plans_[c].width - one.width;
            place(made.items, one,
                  plans_[c].x + (align == card::Align::right    ? spare
                                 : align == card::Align::centre ? 0.5 * spare
                                                                : 0.0),
                  baseline, style);
            baseline += leading(style.size_pt);
        }
    }
    made.height = height;
    return made;
}

Fragment TablePlan::draw_row(const std::vector<card::Text>& row) const {
    Fragment made;
    const double figure_pt = setting_.format.figure_pt;
    const double baseline = ascent(figure_pt);
    made.height = lines_height(1, figure_pt);
    for (std::size_t c = 0; c < plans_.size() && c < row.size(); ++c) {
        const card::Column& column = block_.columns[c];
        const ColumnPlan& plan = plans_[c];
        const TextStyle& style = plan.style;
        if (keeps_figures(column)) {
            place_figure(made.items, figure_of(row[c], style, setting_.measure), plan.figures, plan.x, plan.width,
                         column.align, baseline, style);
            continue;
        }
        const auto lines = break_lines(row[c], style, plan.width, setting_.measure);
        double y = baseline;
        for (const auto& one : lines) {
            place(made.items, one, plan.x, y, style);
            y += leading(style.size_pt);
        }
        made.height =
            std::max(made.height, baseline - ascent(style.size_pt) + lines_height(lines.size(), style.size_pt));
    }
    return made;
}

Fragment TablePlan::draw() const {
    Fragment made;
    const double width = setting_.width;
    if (!block_.title.empty()) {
        TextStyle style = body_style(setting_);
        style.size_pt = setting_.format.figure_pt;
        style.face = Face::bold;
        style.quiet_units = false;
        const Fragment title = paragraph(block_.title, style, width, setting_.measure);
        put(made, title, 0.0, 0.0);
        made.height = title.height + setting_.scaled(1.6);
    }
    const bool has_heads =
        std::any_of(block_.columns.begin(), block_.columns.end(), [](const auto& c) { return !c.head.empty(); });
    if (has_heads) {
        const Fragment heads = draw_heads();
        put(made, heads, 0.0, made.height);
        made.height += heads.height + setting_.scaled(0.7);
    }
    made.items.emplace_back(line(0.0, made.height, width, made.height, has_heads ? 1.5 * rule_pt : rule_pt));
    const double air = setting_.between(setting_.scaled(1.0), setting_.scaled(2.5));
    std::optional<std::pair<double, double>> marked;
    for (std::size_t r = 0; r < block_.rows.size(); ++r) {
        const double top = made.height;
        const Fragment row = draw_row(block_.rows[r]);
        // Capitals have no descender to balance: a little more above than below centres them between the rules.
        put(made, row, 0.0, top + air);
        made.height = top + row.height + 1.7 * air;
        if (block_.marked_row == r) {
            marked = {top, made.height};
        }
        const bool last = r + 1 == block_.rows.size();
        made.items.emplace_back(line(0.0, made.height, width, made.height, last ? rule_pt : hair_pt));
    }
    if (marked) {
        // Round the rules above and below the row.
        const double half = 0.5 * em(1.25 * heavy_pt);
        made.items.emplace_back(
            frame(0.0, marked->first - half, width, marked->second - marked->first + 2.0 * half, 1.25 * heavy_pt));
    }
    made.too_wide = std::max(made.too_wide, too_wide_);
    made.squeezed = squeezed_;
    return made;
}

}  // namespace

Fragment table(const card::Table& block, const Setting& setting) {
    return TablePlan(block, setting).draw();
}

}  // namespace holdwater::layout
