// SPDX-License-Identifier: MIT
// The ladder of the Top-up card: how much boiling water a reading asks for. Card, timeline and simulated cook have it
// from here.
#pragma once

#include "plan/search/ensemble.hpp"

#include <vector>

namespace holdwater::plan {

/// The most litres that a cook needs who pours until it reads the mark, in 95 of 100 scenarios, to half a litre up: of
/// all levels that one with which the box ends full, since a lower one holds less to warm. Every second kelvin from the
/// lowest reading that is not too cold, as far as a card has room; the hottest first.
std::vector<LadderRung> ladder_for(const Ensemble& ensemble, units::Temperature mark);

/// A box that is topped up.
struct LadderBox {
    units::Volume water;          // in it before the pour
    units::HeatCapacity besides;  // liner, and what of the food follows the bath at once
    units::Volume room;           // for so much nothing is taken out first
    units::Area surface;          // of the water, lid off
    units::Temperature air;
};

/// One line of a ladder: the litres with which a cook who pours until it reads the mark has enough in 95 of 100
/// scenarios, not rounded. Of `setup` boiling point and thermometer are used.
units::Volume ladder_pour(const Setup& setup, const LadderBox& box, units::Temperature reading,
                          units::Temperature mark);

/// What the ladder says of a reading: between two lines the colder one, under the last that one.
units::Volume by_ladder(const std::vector<LadderRung>& ladder, units::Temperature reading);

/// Litres as the cards print them: to half a litre.
units::Volume to_half_litre(units::Volume litres, units::Toward toward);

}  // namespace holdwater::plan
