// SPDX-License-Identifier: MIT
// How much a piece of food of a given shape and size should weigh.
#pragma once

#include "trip/trip.hpp"

#include <optional>

namespace holdwater::trip {

/// Density of raw meat and fish without bone, for checking a mass against a size [kg/m3]. Judgement, between water
/// (1000) and lean muscle (about 1080); fat meat is nearer to 1000. Only the check of a user's figures hangs on it.
inline constexpr units::Density density_for_check{1050};

/// Volume of one piece [m3]: slab and block thickness x width x length, round pi/4 d2 l, ball pi/6 d3, with d the
/// thickness. Nothing if a measure that the shape needs is not given.
std::optional<units::Volume> volume_of(const Food& food);

}  // namespace holdwater::trip
