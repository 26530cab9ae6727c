// SPDX-License-Identifier: MIT
// A review as JSON.
#pragma once

#include "answer/review/review.hpp"
#include "problem/problem.hpp"

#include <string>

namespace holdwater::cli {

/// `stamp`: of the trip, as on its cards.
std::string review_json(const trip::Trip& trip, const trip::Log& log, const answer::Review& review,
                        const std::string& stamp);

/// What stopped a review: `refused` is a verdict, anything else has none.
std::string no_review_json(bool refused, const problem::Problems& problems, const problem::Problems& warnings);

}  // namespace holdwater::cli
