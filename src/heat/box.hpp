// SPDX-License-Identifier: MIT
// The box: how fast it loses heat, from a test with readings; what its liner holds; what wind does.
#pragma once

#include "facts/names.hpp"
#include "heat/bath.hpp"
#include "problem/problem.hpp"
#include "units/quantity.hpp"

#include <array>
#include <vector>

namespace holdwater::heat {

struct BathReading {
    units::Duration after;
    units::Temperature bath;
};

struct BoxTest {
    std::vector<BathReading> readings;  // two or more, rising time
    units::Volume water;
    units::Temperature outside;
    units::HeatCapacity liner;
    units::TemperatureDifference reading_error;  // of one reading, about 95 %
};

/// Loss with its 90 % band. The band is never narrower than facts spread "box-loss".
struct BoxLoss {
    units::HeatLoss likely;
    units::HeatLoss low;
    units::HeatLoss high;
    units::Duration time_constant;  // of the tested water and liner
    bool weak = false;              // the bath fell by less than 5 K between first and last reading
};

/// Errors: too-few-readings, times-not-rising, bath-not-above-outside, bath-not-falling, nothing-in-the-box.
problem::Result<BoxLoss> loss_from(const BoxTest& test);

/// Planning value of a liner's heat capacity [J/K] from the inside measures (facts liner.*).
units::HeatCapacity liner_of(const std::array<units::Length, 3>& inside);

units::Volume volume_of(const std::array<units::Length, 3>& inside);

/// Heat [W/m2] that an open water surface gives off: evaporation and radiation by facts lid.*, radiation in proportion
/// to how much colder the air is.
double open_surface_loss(units::Temperature water, units::Temperature air);

/// How much more a box loses in wind than in still air (1 = still). Steps of half a class: position 0 still, 1 breezy,
/// 2 windy, linear between and beyond 2; never under 1.
double wind_factor(double position);
double wind_position(facts::Wind wind);

}  // namespace holdwater::heat
