// SPDX-License-Identifier: MIT
// A review as text for people and as a chart.
#pragma once

#include "answer/review/review.hpp"
#include "card/content.hpp"

#include <string>
#include <string_view>

namespace holdwater::cli {

/// "eat", "not-done", "finish-and-eat-next", "finish-and-eat-now", "throw-away".
std::string_view verdict_word(answer::Verdict verdict);
/// The same for people: "throw away".
std::string_view verdict_phrase(answer::Verdict verdict);

/// `stamp`: of the trip, as on its cards.
std::string review_text(const trip::Trip& trip, const trip::Log& log, const answer::Review& review,
                        const std::string& stamp);
/// Readings, the likely bath and the lowest it may have been, and the core of the food that leads the verdict.
card::Card review_card(const trip::Trip& trip, const trip::Log& log, const answer::Review& review);

}  // namespace holdwater::cli
