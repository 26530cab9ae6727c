// SPDX-License-Identifier: MIT
// Comma-separated values, cell by cell with places. Knows nothing of what the cells mean.
#pragma once

#include "trip/report.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace holdwater::trip {

struct CsvCell {
    std::string text;  // without quotes and without white space around
    int column = 1;    // where it begins in its line, in letters, from 1
};

struct CsvRow {
    int line = 0;
    std::vector<CsvCell> cells;
};

/// Rows that hold anything; empty lines and lines that begin with '#' are left out. A cell in double quotes may hold
/// commas and doubled quotes, but not a line break. Line ends may be LF or CR LF; a byte-order mark is skipped. An open
/// quote is reported and the row left out. More rows than bounds::log_rows are reported, and one that is empty stands
/// for them; a row of more cells than bounds::log_columns is reported and left out. Where it is the first row,
/// nothing else is read.
std::vector<CsvRow> split_csv(std::string_view text, Report& report);

}  // namespace holdwater::trip
