// SPDX-License-Identifier: MIT
// Plain sheets as a file: the basis of a trip, and whatever else is read on paper and not carried as a card.
#pragma once

#include "layout/layout.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

/// A PDF in memory, in the type of layouts/formats/plain.toml. Errors: those of layout::lay_out_sheets and
/// draw::to_pdf.
problem::Result<std::string> sheets_pdf(const card::Sheets& sheets, const layout::Sheet& paper,
                                        const layout::Measure& measure, const layout::Phrases& phrases);

}  // namespace holdwater::cli
