// SPDX-License-Identifier: MIT
#include "trip/written.hpp"

#include <fmt/format.h>

#include <cmath>

namespace holdwater::trip {
namespace {

/// Nine digits and six places, as the canonical text has them.
std::string with_unit(double value, const char* unit) {
    constexpr double places = 1e6;
    return fmt::format("{:.9g} {}", std::round(value * places) / places, unit);
}

}  // namespace

std::string written(units::Temperature t) {
    return with_unit(t.celsius(), "C");
}
std::string written(units::TemperatureDifference d) {
    return with_unit(d.si(), "K");
}
std::string written(units::Length l) {
    return with_unit(units::in_millimetres(l), "mm");
}
std::string written(units::Mass m) {
    return with_unit(m.si(), "kg");
}
std::string written(units::Volume v) {
    return with_unit(units::in_litres(v), "L");
}
std::string written(units::HeatLoss loss) {
    return with_unit(loss.si(), "W/K");
}

}  // namespace holdwater::trip
