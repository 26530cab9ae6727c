// SPDX-License-Identifier: MIT
// One food of a review. Inside answer/ only.
#pragma once

#include "answer/hold/piece.hpp"
#include "answer/review/review.hpp"
#include "answer/review/review_bath.hpp"
#include "answer/review/review_notes.hpp"

namespace holdwater::answer {

/// The standard by which a written log is judged. Someone did read the bath, so a trip without a thermometer counts as
/// one with it; a target that the rules refuse does not matter here, since the core itself is looked at (it is warned
/// of). Errors: a food that is refused for itself.
problem::Result<safety::Standard> standard_for_review(const trip::Trip& trip, const trip::Food& food,
                                                      problem::Problems& remarks);

/// The modes of a piece as measured (likely), or thicker and slow, or thinner and fast, by the spread of thicknesses.
problem::Result<heat::Modes> modes_for(const Piece& piece, heat::Bound reading);

/// Everything but what other foods say.
problem::Result<FoodReview> review_food(const trip::Trip& trip, const trip::Log& log, const trip::Food& food,
                                        const safety::Standard& standard, Stay stay, const BathPaths& paths,
                                        units::TemperatureDifference error);

}  // namespace holdwater::answer
