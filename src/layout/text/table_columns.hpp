// SPDX-License-Identifier: MIT
// How wide the columns of a table are, from what stands in them. For block_table.cpp.
#pragma once

#include "layout/style.hpp"
#include "layout/text/figures.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::layout {

struct ColumnPlan {
    Millimetres natural;
    Millimetres least;
    Millimetres snug;    // least, but with brief words in one line
    Millimetres wanted;  // with its heading in one line
    Millimetres width;
    Millimetres x;
    FigureColumn figures;
    TextStyle style;  // of its cells
};

class TableColumns {
  public:
    TableColumns(const card::Table& block, const BlockContext& setting);

    const std::vector<ColumnPlan>& plans() const { return plans_; }
    Millimetres too_wide() const { return too_wide_; }  // mm
    bool squeezed() const { return squeezed_; }         // brief words had to be broken

  private:
    TextStyle column_style(std::size_t c) const;
    void measure_columns();
    void share_width();

    const card::Table& block_;
    const BlockContext& setting_;
    Millimetres pad_;
    std::vector<ColumnPlan> plans_;
    Millimetres too_wide_;
    bool squeezed_ = false;
};

/// Headings with figures in them ("at 60 °C") are read as figures are.
TextStyle table_head_style(const card::Table& block, const BlockContext& setting);

/// Whether the figures of a column stand in line.
bool keeps_figures(const card::Column& column);

}  // namespace holdwater::layout
