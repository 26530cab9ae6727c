// SPDX-License-Identifier: MIT
// How figures are numbered, where it is not simply by food, event or row.
#pragma once

#include "card/figures/list.hpp"

namespace holdwater::card {

/// On the Hold card, through the foods of a trip: the numbers of the first column, row and cell of a food, from 1;
/// its cells are counted row by row.
struct HoldPlaces {
    int bath = 1;
    int row = 1;
    int cell = 1;
};
HoldPlaces hold_places(const plan::Plan& plan, const plan::FoodPlan& food);

/// What the box should read at the look that Plan asks for once it has settled: whoever reads so much or more then need
/// not read again before the next look of Plan, and none but those may be asked for, since food is ready by what is
/// read at them. At any other time that reading says nothing of the kind. Nothing where that look is not asked for, or
/// reads the mark. Over a night, and where it is no more than the action line, it is never under the reading after
/// which the box is left until then in the cold, and nothing where none is.
std::optional<units::Temperature> settled_reads(const plan::Plan& plan);

/// Where that look may read the action line or less: the least with which it goes on by Plan.
std::optional<units::Temperature> settled_least(const plan::Plan& plan);

/// Under this reading nothing is kept, watched or not; nothing where the coldest row still keeps something.
std::optional<units::Temperature> away_below(const plan::Plan& plan);

/// The name of a food and of a side dish among the figures; of two of one name the second has a number too.
Which food_place(const plan::Plan& plan, const plan::FoodPlan& food);
Which side_place(const plan::Sides& sides, std::size_t index);

}  // namespace holdwater::card
