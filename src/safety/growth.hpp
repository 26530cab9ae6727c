// SPDX-License-Identifier: MIT
// The growth model behind the clocks, and an independent model to check it against.
#pragma once

#include "facts/facts.hpp"
#include "units/quantity.hpp"

#include <optional>
#include <string_view>

namespace holdwater::safety {

/// Growth rate of C. perfringens [log10/h]: b^2 (T - Tmin)^2 (1 - exp(c (T - Tmax))).
/// b [1/(K sqrt(h))], Tmin, Tmax [C], c [1/K]: facts. Source: juneja-2011, models 1157 to 1162 of the copy.
/// Valid 10 to 51 C. Outside: as the formula goes on up to Tmin and Tmax, 0 beyond them.
double growth_rate(const facts::GrowthModel& model, units::Temperature t);

/// Growth without lag while the temperature goes from one to another in a straight line [log10]; to 1e-9.
double growth_between(const facts::GrowthModel& model, units::Temperature from, units::Temperature to,
                      units::Duration takes);

/// Fastest growth at a temperature or at any above it [log10/h]: what a layer that was no colder can have had. Never
/// falls as the temperature falls. The rate has one peak; it is looked for in steps of 0.01 K.
class FastestAbove {
  public:
    explicit FastestAbove(const facts::GrowthModel& model);
    double operator()(units::Temperature t) const;
    double peak() const { return peak_; }

  private:
    const facts::GrowthModel* model_;
    double peak_ = 0.0;
    double optimum_ = 0.0;
};

/// log10 growth after a lag: log10((1 + q0 10^A) / (1 + q0)).
/// A: exponent, the integral of the growth rate [log10]; q0: state of the cells at the start, above 0.
/// Source: primary model of juneja-2011 without its ceiling, solved exactly. Valid for all A >= 0.
double lagged_growth(double exponent, double q0);

/// The exponent A that gives a log10 growth; the inverse of lagged_growth.
double exponent_for(double growth, double q0);

/// Shortest time in which a log10 growth can come about, the whole of it at one temperature at or below `warmest`;
/// nothing if none grows there.
std::optional<units::Duration> fastest_growth(const facts::GrowthModel& model, double growth, double q0,
                                              units::Temperature warmest);

/// Highest temperature, to 0.1 K upward, at which a log10 growth can come about within a time; nothing if none does.
std::optional<units::Temperature> warmest_growth(const facts::GrowthModel& model, double growth, double q0,
                                                 units::Duration within);

/// Another published form, for cross-checks only.
struct Cardinal {
    double optimum_rate = 0.0;  // 1/h, natural logarithms
    units::Temperature lowest;
    units::Temperature optimum;
    units::Temperature highest;
};

/// "beef" or "chicken".
Cardinal cardinal_of(std::string_view food);

/// Growth rate of C. perfringens [log10/h] by the cardinal model:
/// mu_opt (T - Tmax)(T - Tmin)^2 / {(Topt - Tmin)[(Topt - Tmin)(T - Topt) - (Topt - Tmax)(Topt + Tmin - 2T)]} / ln 10.
/// Source: huang-2020, parameters read, form from memory. Valid Tmin to Tmax. Outside: 0.
double cardinal_rate(const Cardinal& model, units::Temperature t);

}  // namespace holdwater::safety
