// SPDX-License-Identifier: MIT
// What the figures of the Kitchen card are worked out from.
#pragma once

#include "card/figures/rounding.hpp"

#include <optional>
#include <string>

namespace holdwater::card {

/// How long over the fire, up to a minute.
std::string fire_time(units::Duration d);

/// Between which readings ice slush proves that the thermometer errs no more than the plan allows: half degrees,
/// inwards; "-1 to 1 °C".
std::string slush_reads(const SafeSide& safe);

/// When the first piece comes out for the sear of a meal: not before all that is seared for it is surely ready.
units::LocalTime first_piece_out(const plan::Plan& plan, const plan::Sear& sear, units::LocalTime meal);

/// When it is asked whether the guests are late: before the first food is taken out for the meal, and where one more
/// top-up must keep it, in time for that fire. Nothing where no meal is served from this box.
std::optional<units::LocalTime> late_asked(const plan::Plan& plan);

/// The most that one top-up of the plan may need in 95 of 100: what is poured where nobody can read how much.
units::Volume most_of_a_pour(const plan::Plan& plan);

/// The thickest slice of leftovers that cools in time there, with cold on both faces (free) or one (floor).
std::optional<units::Length> thickest_slice(const plan::Leftovers& leftovers, answer::Medium medium,
                                            facts::Contact contact);

}  // namespace holdwater::card
