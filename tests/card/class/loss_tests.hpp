// SPDX-License-Identifier: MIT
// The box test of the program, for the tests of the loss finder.
#pragma once

#include "answer/gauge/gauge.hpp"
#include "card/class/class_frames.hpp"
#include "card/class/loss_finder.hpp"

#include <optional>

namespace holdwater::support {

/// A box that read the finder's start, and that reading [C] so many hours later, in that air [C] with those litres
/// [W/K]; nothing where no box loses so little or so much.
inline std::optional<double> gauged(const card::LossFinder& finder, double air, double reading, double hours,
                                    double litres) {
    answer::GaugeQuestion question;
    question.readings = {{units::Duration{0}, finder.start(), "", {}},
                         {units::hours(hours), units::celsius(reading), "", {}}};
    question.outside.add(units::Duration{0}, units::celsius(air));
    question.water = units::litres(litres);
    question.reading_error = units::kelvins(0.5);
    question.floor = units::celsius(50);
    const auto made = answer::gauge(question);
    return made ? std::optional(made->loss.likely.si()) : std::nullopt;
}

inline double loss_step() {
    return facts::facts().value("finder.loss-step");
}

}  // namespace holdwater::support
