// SPDX-License-Identifier: MIT
// One card as a picture of its own, for --preview of commands that print no deck.
#pragma once

#include "card/content.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

/// The card's face as PNG bytes, laid out in layouts/formats/chart.toml and checked like any card: it needs a caution.
/// `title` stands in the foot. Error: chart-two-faces where the content does not fit one face, and all of layout's.
problem::Result<std::string> chart_png(const card::Card& card, const std::string& title);

}  // namespace holdwater::cli
