// SPDX-License-Identifier: MIT
#include "safety/growth.hpp"

#include "safety/clocks.hpp"

#include <algorithm>
#include <cmath>

namespace holdwater::safety {
namespace {

/// The integral of the rate over the temperature from the model's lowest to t, both inside its range [log10 K/h]: with
/// u = t - lowest, of b^2 u^2 (1 - e^(c (t - highest))).
double integral_to(const facts::GrowthModel& model, double celsius) {
    const double u = celsius - model.lowest.celsius();
    const double c = model.c;
    const double at_lowest = std::exp(c * (model.lowest - model.highest).si());
    const double slowing = std::exp(c * u) * (u * u - 2.0 * u / c + 2.0 / (c * c)) - 2.0 / (c * c);
    return model.b * model.b * (u * u * u / 3.0 - at_lowest / c * slowing);
}

/// Mean of the rate between two temperatures.
double mean_rate(const facts::GrowthModel& model, double from, double to) {
    // So short a stretch would drown in the rounding of the two integrals; on it Simpson's rule is as exact.
    constexpr double short_stretch = 0.1;  // K
    if (std::abs(to - from) < short_stretch) {
        const auto rate = [&](double t) { return growth_rate(model, units::celsius(t)); };
        return (rate(from) + 4.0 * rate(0.5 * (from + to)) + rate(to)) / 6.0;
    }
    const auto inside = [&](double t) { return std::clamp(t, model.lowest.celsius(), model.highest.celsius()); };
    return (integral_to(model, inside(to)) - integral_to(model, inside(from))) / (to - from);
}

/// log10(1 + 10^x) without overflow.
double log10_one_plus_power(double x) {
    const double natural = x * std::log(10.0);
    return (natural > 0.0 ? natural + std::log1p(std::exp(-natural)) : std::log1p(std::exp(natural))) / std::log(10.0);
}

}  // namespace

double growth_rate(const facts::GrowthModel& model, units::Temperature t) {
    if (t <= model.lowest || t >= model.highest) {
        return 0.0;
    }
    const double above = (t - model.lowest).si();
    return model.b * model.b * above * above * -std::expm1(model.c * (t - model.highest).si());
}

FastestAbove::FastestAbove(const facts::GrowthModel& model) : model_(&model) {
    // The top of the curve is flat: looked for in whole kelvins first, then in hundredths around the best.
    constexpr int fine = 100;
    const int end = static_cast<int>(std::floor((model.highest - model.lowest).si())) * fine;
    const auto look = [&](int from, int to, int step) {
        for (int i = std::max(0, from); i <= std::min(to, end); i += step) {
            const double t = model.lowest.celsius() + static_cast<double>(i) / fine;
            const double rate = growth_rate(model, units::celsius(t));
            if (rate > peak_) {
                peak_ = rate;
                optimum_ = t;
            }
        }
    };
    look(0, end, fine);
    const int near = static_cast<int>(std::lround((optimum_ - model.lowest.celsius()) * fine));
    look(near - fine, near + fine, 1);
}

double FastestAbove::operator()(units::Temperature t) const {
    return t.celsius() < optimum_ ? peak_ : growth_rate(*model_, t);
}

std::optional<units::Duration> fastest_growth(const facts::GrowthModel& model, double growth, double q0,
                                              units::Temperature warmest) {
    // The rate has one peak between its ends: looked for in steps of 0.1 K, in which it changes by well under 1 %.
    double rate = 0.0;
    for (double t = model.lowest.celsius(); t <= std::min(warmest, model.highest).celsius(); t += 0.1) {
        rate = std::max(rate, growth_rate(model, units::celsius(t)));
    }
    return rate > 0.0 ? std::optional(units::hours(exponent_for(growth, q0) / rate)) : std::nullopt;
}

std::optional<units::Temperature> warmest_growth(const facts::GrowthModel& model, double growth, double q0,
                                                 units::Duration within) {
    const double needed = exponent_for(growth, q0) / units::in_hours(within);  // log10/h
    for (double t = std::ceil(model.highest.celsius() * 10.0) / 10.0; t > model.lowest.celsius(); t -= 0.1) {
        if (growth_rate(model, units::celsius(t - 0.1)) >= needed) {
            return units::celsius(t);
        }
    }
    return std::nullopt;
}

double growth_between(const facts::GrowthModel& model, units::Temperature from, units::Temperature to,
                      units::Duration takes) {
    const double hours = units::in_hours(takes);
    if (!(hours > 0.0) || std::max(from, to) <= model.lowest || std::min(from, to) >= model.highest) {
        return 0.0;
    }
    return hours * mean_rate(model, from.celsius(), to.celsius());
}

double growth_without_lag(const facts::GrowthModel& model, const units::History& core) {
    double sum = 0.0;
    for (std::size_t i = 1; i < core.points.size(); ++i) {
        const units::History::Point& a = core.points[i - 1];
        const units::History::Point& b = core.points[i];
        sum += growth_between(model, a.value, b.value, b.at - a.at);
    }
    return sum;
}

double growth_with_lag(const facts::GrowthModel& model, const units::History& core, double q0) {
    return lagged_growth(growth_without_lag(model, core), q0);
}

double lagged_growth(double exponent, double q0) {
    return log10_one_plus_power(exponent + std::log10(q0)) - std::log1p(q0) / std::log(10.0);
}

double exponent_for(double growth, double q0) {
    return std::log10((std::pow(10.0, growth) * (1.0 + q0) - 1.0) / q0);
}

double cardinal_rate(const Cardinal& model, units::Temperature t) {
    if (t <= model.lowest || t >= model.highest) {
        return 0.0;
    }
    const double low = model.lowest.celsius();
    const double best = model.optimum.celsius();
    const double high = model.highest.celsius();
    const double at = t.celsius();
    const double top = (at - high) * (at - low) * (at - low);
    const double bottom = (best - low) * ((best - low) * (at - best) - (best - high) * (best + low - 2.0 * at));
    return model.optimum_rate * top / bottom / std::log(10.0);
}

Cardinal cardinal_of(std::string_view food) {
    const facts::Facts& facts = facts::facts();
    const std::string prefix = "cardinal." + std::string{food};
    return {facts.value(prefix + ".optimum-rate"), facts.temperature(prefix + ".lowest"),
            facts.temperature(prefix + ".optimum"), facts.temperature(prefix + ".highest")};
}

}  // namespace holdwater::safety
