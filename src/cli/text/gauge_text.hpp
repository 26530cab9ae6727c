// SPDX-License-Identifier: MIT
// A gauged box in words, as a plot of characters and as a chart.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "card/content.hpp"
#include "problem/problem.hpp"
#include "trip/read_log.hpp"

#include <string>
#include <vector>

namespace holdwater::cli {

/// Verdict first; then hours, the liner, lines for a trip file and the residuals.
std::string gauge_text(const answer::Gauge& gauge, const answer::GaugeQuestion& question);
/// Lines for [[box]] of a trip file, or [box] of a kit: two readings that mean the same as the test.
std::string box_lines(const answer::Gauge& gauge, const answer::GaugeQuestion& question);
/// Readings less the fitted line over time, 72 columns wide, for two readings or thousands.
std::string residual_plot(const answer::Gauge& gauge, units::TemperatureDifference reading_error);
/// Readings, fitted line, its band and the floor.
card::Card gauge_card(const answer::Gauge& gauge, const answer::GaugeQuestion& question,
                      const std::vector<trip::LogGap>& gaps);

}  // namespace holdwater::cli
