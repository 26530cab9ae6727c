// SPDX-License-Identifier: MIT
#pragma once

#include "card/figures/numbers.hpp"
#include "plan/result/plan.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdwater::cli {

/// The plan as text for a terminal: verdict first, timeline, curve.
/// `since`: without what is behind by then.
std::string plan_text(const plan::Plan& plan, std::optional<units::LocalTime> since = std::nullopt);
/// How each number of the cards was made safe: quantile, rounding, source.
std::string explain_text(const plan::Plan& plan, const std::vector<card::CardNumber>& numbers);
/// Bath and core with their bands and the floor, drawn with characters.
std::string curve_text(const plan::Plan& plan);

}  // namespace holdwater::cli
