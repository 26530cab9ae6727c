// SPDX-License-Identifier: MIT
// What may make a box lose less, beside a refusal: an estimate for choosing what to try, never for planning. Whoever
// tries one measures the box with it on (`holdwater gauge`), and writes that into the trip file.
#pragma once

#include "facts/facts.hpp"
#include "trip/trip.hpp"
#include "units/interval.hpp"

#include <string>
#include <vector>

namespace holdwater::answer {

struct Levered {
    const facts::Lever* lever = nullptr;
    units::Interval<units::HeatLoss> loss;  // with the lever on; likely in the middle of its resistances
};

/// Every lever of the facts on a box that loses `loss` [W/K], each alone, the one that helps most first. Takes the loss
/// as even over the six faces, inside measures as areas: a hollow lid gains more than this says. The loss must be above
/// zero.
std::vector<Levered> levers_on(const trip::Box& box, units::HeatLoss loss);

/// "30 mm of foam on the lid, strapped down: 0.90 to about 0.78 W/K; measure it with gauge", the likely reading.
std::string words_of(const Levered& one, units::HeatLoss before);

}  // namespace holdwater::answer
