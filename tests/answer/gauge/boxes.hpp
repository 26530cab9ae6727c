// SPDX-License-Identifier: MIT
// Box tests of boxes that are known, run by the bath engine, with noise that is the same on every machine.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "heat/bath.hpp"
#include "support/problems.hpp"

#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

namespace holdwater::support {

/// Normal deviates from a linear congruential generator (Knuth's MMIX constants) and the Box-Muller transform.
class Noise {
  public:
    explicit Noise(std::uint64_t start) : state_(start) {}
    double next() {
        const double a = uniform();
        const double b = uniform();
        return std::sqrt(-2.0 * std::log(a)) * std::cos(2.0 * std::acos(-1.0) * b);
    }

  private:
    double uniform() {
        state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
        return (static_cast<double>(state_ >> 11U) + 0.5) / 9007199254740992.0;
    }
    std::uint64_t state_;
};

struct KnownBox {
    double loss = 0.9;      // W/K
    double liner = 4000.0;  // J/K
    double litres = 25.0;
    double poured = 64.0;        // C; the liner stands at the first air before
    double reading_error = 0.5;  // K, 95 %
};

/// Readings at these hours after the fill; a reading at 0 h is of the settled bath.
inline answer::GaugeQuestion run_box(const KnownBox& box, const std::vector<double>& hours, const units::History& air,
                                     Noise* noise = nullptr) {
    heat::Bath bath({units::HeatLoss{box.loss}, units::HeatCapacity{box.liner}, units::Area{0.15}}, units::Volume{0},
                    air.at(units::Duration{0}), air);
    bath.pour(units::Volume{0}, units::litres(box.litres), units::celsius(box.poured));
    answer::GaugeQuestion question;
    for (const double hour : hours) {
        bath.advance_to(units::hours(hour));
        const double off = noise != nullptr ? noise->next() * box.reading_error / 1.96 : 0.0;
        question.readings.push_back({units::hours(hour), bath.temperature() + units::kelvins(off), "", std::nullopt});
    }
    question.outside = air;
    question.water = units::litres(box.litres);
    question.reading_error = units::kelvins(box.reading_error);
    question.floor = units::celsius(54.4);
    question.liner = units::HeatCapacity{box.liner};
    return question;
}

inline units::History steady(double celsius) {
    units::History air;
    air.add(units::Duration{0}, units::celsius(celsius));
    return air;
}

inline std::vector<double> every(double step, double last) {
    std::vector<double> hours;
    for (int i = 0; step * i <= last + 1e-9; ++i) {
        hours.push_back(step * i);
    }
    return hours;
}

}  // namespace holdwater::support
