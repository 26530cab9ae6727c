// SPDX-License-Identifier: MIT
#include "heat/box.hpp"

#include "facts/kept.hpp"
#include "heat/water.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace holdwater::heat {
namespace {

problem::Problems faults_of(const BoxTest& test) {
    problem::Problems faults;
    if (test.readings.size() < 2) {
        faults.push_back(problem::error("too-few-readings", "a box test needs two readings of the bath or more",
                                        "read at the fill and again some hours later"));
    }
    for (std::size_t i = 0; i < test.readings.size(); ++i) {
        const BathReading& reading = test.readings[i];
        if (i > 0 && !(reading.after > test.readings[i - 1].after)) {
            faults.push_back(
                problem::error("times-not-rising",
                               fmt::format("reading {} of the box test is not later than the one before it", i + 1),
                               "give the readings in the order in which they were taken"));
        }
        if (!(reading.bath > test.outside)) {
            faults.push_back(
                problem::error("bath-not-above-outside",
                               fmt::format("reading {} of the box test, {:.1f} C, is not above the {:.1f} C "
                                           "outside",
                                           i + 1, reading.bath.celsius(), test.outside.celsius()),
                               "a box test needs hot water; are Celsius and Fahrenheit mixed up?"));
        }
    }
    return faults;
}

/// a + b t through ln(T - Ta), by least squares; error of b from an error of each reading, both 95 % or both the same.
struct Line {
    double slope = 0.0;
    double slope_error = 0.0;
};

Line line_through(const BoxTest& test) {
    const auto count = static_cast<double>(test.readings.size());
    double mean_time = 0.0;
    for (const BathReading& reading : test.readings) {
        mean_time += reading.after.si() / count;
    }
    double spread = 0.0;
    double sum = 0.0;
    double square_error = 0.0;
    for (const BathReading& reading : test.readings) {
        const double t = reading.after.si() - mean_time;
        const double above = (reading.bath - test.outside).si();
        spread += t * t;
        sum += t * std::log(above);
        square_error += std::pow(t * test.reading_error.si() / above, 2);
    }
    return {sum / spread, std::sqrt(square_error) / spread};
}

}  // namespace

problem::Result<BoxLoss> loss_from(const BoxTest& test) {
    // Returns UA [W/K] = -C d ln(T - Ta)/dt, exact for two readings, least squares for more; C [J/K] water and liner.
    // Source: standard cooling law (heat reference e.1), from memory. Valid for a closed lid and a steady outside;
    // faults are refused.
    problem::Problems faults = faults_of(test);
    const double capacity = test.readings.empty() ? 0.0
                                                  : test.water.si() * water_density(test.readings.front().bath).si() *
                                                            water_specific_heat().si() +
                                                        test.liner.si();
    if (!test.readings.empty() && !(capacity > 0.0)) {
        faults.push_back(
            problem::error("nothing-in-the-box", "a box test needs water in the box", "test_water = \"20 L\""));
    }
    if (!faults.empty()) {
        return faults;
    }
    const Line line = line_through(test);
    if (!(line.slope < 0.0)) {
        return problem::error("bath-not-falling", "the bath of the box test did not cool",
                              "check the order of the readings; wait longer between them");
    }
    const facts::Facts& facts = facts::facts();
    // A reading's error is taken at about 95 % (1.96 standard errors), the band at 90 % (1.645).
    const double share = line.slope_error / -line.slope * (1.645 / 1.96);
    const facts::Spread& least = facts.spread("box-loss");
    const double likely = -line.slope * capacity;
    BoxLoss loss;
    loss.likely = units::HeatLoss{likely};
    // Down by the same share as up; where that nears nothing, along a curve that touches it at a half and stays above
    // 0.
    const double down = share < 0.5 ? 1.0 - share : 0.25 / share;
    loss.low = units::HeatLoss{likely * std::min(down, least.low)};
    loss.high = units::HeatLoss{likely * std::max(1.0 + share, least.high)};
    loss.time_constant = units::Duration{-1.0 / line.slope};
    const double fall = (test.readings.front().bath - test.readings.back().bath).si();
    loss.weak = fall < facts.value("box-test.weak-fall");
    return loss;
}

units::HeatCapacity liner_of(const std::array<units::Length, 3>& inside) {
    const double shell = facts::facts().value("liner.shell");
    const double foam = facts::facts().value("liner.foam");
    const double a = inside[0].si();
    const double b = inside[1].si();
    const double c = inside[2].si();
    return units::HeatCapacity{2.0 * (a * b + b * c + c * a) * (shell + foam)};
}

units::Volume volume_of(const std::array<units::Length, 3>& inside) {
    return units::Volume{inside[0].si() * inside[1].si() * inside[2].si()};
}

double wind_factor(double position) {
    const double breezy = facts::kept([](const facts::Facts& facts) { return facts.value("wind.breezy"); });
    const double windy = facts::kept([](const facts::Facts& facts) { return facts.value("wind.windy"); });
    if (position <= 1.0) {
        return 1.0 + std::max(position, 0.0) * (breezy - 1.0);
    }
    return breezy + (position - 1.0) * (windy - breezy);
}

double wind_position(facts::Wind wind) {
    switch (wind) {
        case facts::Wind::still:
            return 0.0;
        case facts::Wind::breezy:
            return 1.0;
        case facts::Wind::windy:
            break;
    }
    return 2.0;
}

}  // namespace holdwater::heat
