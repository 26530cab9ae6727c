// SPDX-License-Identifier: MIT
#include "answer/gauge/gauge.hpp"
#include "facts/facts.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace holdwater::answer {

std::optional<units::Duration> time_above(units::Temperature start, units::Temperature floor, units::Temperature air,
                                          units::Duration time_constant) {
    if (!(start > floor)) {
        return units::Duration{0};
    }
    if (!(floor > air)) {
        return std::nullopt;
    }
    return time_constant * std::log((start - air) / (floor - air));
}

std::array<HoursAbove, 3> hours_above(const Gauge& made, units::TemperatureDifference reading_error) {
    const facts::Facts& facts = facts::facts();
    const units::Temperature mild = facts.temperature("gauge.air-mild");
    std::array<units::Temperature, 3> airs{made.outside, facts.temperature("gauge.air-freezing"),
                                           facts.temperature("gauge.air-cold")};
    for (std::size_t i = 1; i < airs.size(); ++i) {
        if (std::abs((airs[i] - made.outside).si()) < facts.value("gauge.air-near")) {
            airs[i] = mild;
        }
    }
    std::sort(airs.begin(), airs.end(), std::greater<>());
    const units::Duration tau = made.loss.time_constant;
    const double more = made.loss.high / made.loss.likely;
    std::array<HoursAbove, 3> hours;
    for (std::size_t i = 0; i < airs.size(); ++i) {
        const auto low = [&](facts::Wind wind) {
            return time_above(made.start - reading_error, made.floor, airs[i],
                              tau / (more * heat::wind_factor(heat::wind_position(wind))));
        };
        hours[i] = {airs[i], time_above(made.start, made.floor, airs[i], tau), low(facts::Wind::still),
                    low(facts::Wind::breezy), low(facts::Wind::windy)};
    }
    return hours;
}

}  // namespace holdwater::answer
