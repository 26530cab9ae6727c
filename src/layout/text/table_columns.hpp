// SPDX-License-Identifier: MIT
// How wide the columns of a table are, from what stands in them. For block_table.cpp.
#pragma once

#include "layout/style.hpp"
#include "layout/text/figures.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::layout {

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

class TableColumns {
  public:
    TableColumns(const card::Table& block, const BlockContext& setting);

    const std::vector<ColumnPlan>& plans() const { return plans_; }
    double too_wide() const { return too_wide_; }  // mm
    bool squeezed() const { return squeezed_; }    // brief words had to be broken

  private:
    TextStyle column_style(std::size_t c) const;
    void measure_columns();
    void share_width();

    const card::Table& block_;
    const BlockContext& setting_;
    double pad_;
    std::vector<ColumnPlan> plans_;
    double too_wide_ = 0.0;
    bool squeezed_ = false;
};

/// Headings with figures in them ("at 60 °C") are read as figures are.
TextStyle table_head_style(const card::Table& block, const BlockContext& setting);

/// Whether the figures of a column stand in line.
bool keeps_figures(const card::Column& column);

}  // namespace holdwater::layout
