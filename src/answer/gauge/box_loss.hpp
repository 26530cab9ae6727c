// SPDX-License-Identifier: MIT
// The loss of a box of a trip: from its test, or as given.
#pragma once

#include "heat/box.hpp"
#include "problem/problem.hpp"
#include "trip/trip.hpp"

namespace holdwater::answer {

/// Likely loss and its band; a given loss has that of facts spread "box-loss". Errors: those of heat::loss_from and
/// loss-out-of-range, at the box in the trip file.
problem::Result<heat::BoxLoss> loss_of(const trip::Box& box, units::HeatCapacity liner);

}  // namespace holdwater::answer
