// SPDX-License-Identifier: MIT
// What becomes of each food, in a line or two.
#pragma once

#include "card/shared/writer.hpp"

#include <vector>

namespace holdwater::card {

/// The foods for which one of their times is this one, by name.
Text names_at(const CardWriter& writer, units::LocalTime plan::FoodPlan::*time, units::LocalTime at);

/// When a food is ready: on what condition, and when else. By the clock where nobody reads.
Text ready_text(const CardWriter& writer, const CardFigures& on, const plan::FoodPlan& food);

/// What consumer advice asks beyond the plan, once where it is the same for all.
std::vector<Note> advice_lines(const CardWriter& writer, const CardFigures& on);

/// Of every food that is only kept hot what keeps it safe.
std::vector<Note> hot_lines(const CardWriter& writer, const CardFigures& on);

/// Of every food its pieces, its centre in the bath or over the fire, and what else must be known of it.
std::vector<Note> food_lines(const CardWriter& writer, const CardFigures& on);

}  // namespace holdwater::card
