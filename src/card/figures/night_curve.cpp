// SPDX-License-Identifier: MIT
#include "card/figures/night_curve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::card {

Curve night_curve(const Telling& telling) {
    const plan::Night& night = telling.plan.night;
    Curve curve;
    const bool us = telling.us_first();
    const auto drawn = [us](units::Temperature t) { return us ? t.fahrenheit() : t.celsius(); };
    for (std::size_t i = 0; i < night.curve.size(); ++i) {
        const double x = night.curve_hours[i];
        curve.low.push_back({x, drawn(night.curve[i].low)});
        curve.likely.push_back({x, drawn(night.curve[i].likely)});
        curve.high.push_back({x, drawn(night.curve[i].high)});
    }
    curve.floor = std::ceil(drawn(telling.plan.levels.read_floor) - 1e-9);
    for (double h = 0; h <= night.curve_hours.back() + 1e-9; h += 2.0) {
        curve.x_labels.push_back({h, fmt::format("{:.0f}", h)});
    }
    const double step = us ? 10.0 : 5.0;
    const double top = std::ceil(curve.high.front().y / step) * step;
    const double bottom = std::floor(std::min(curve.low.back().y, curve.floor) / step) * step;
    for (double t = bottom; t <= top; t += step) {
        curve.y_labels.push_back({t, fmt::format("{:.0f}", t)});
    }
    return curve;
}

}  // namespace holdwater::card
