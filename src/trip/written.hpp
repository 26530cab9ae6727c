// SPDX-License-Identifier: MIT
// Values as a trip file has them, fine enough to be read back as they are: "60 C", "3 K", "42 mm", "0.9 kg", "34 L",
// "0.65 W/K", without the quotes.
#pragma once

#include "units/quantity.hpp"

#include <string>

namespace holdwater::trip {

std::string written(units::Temperature t);
std::string written(units::TemperatureDifference d);
std::string written(units::Length l);
std::string written(units::Mass m);
std::string written(units::Volume v);
std::string written(units::HeatLoss loss);

}  // namespace holdwater::trip
