// SPDX-License-Identifier: MIT
// How well a box holds heat, from readings of a bath that cools in it: its loss with a band, what its liner takes up,
// and how long such a fill stays warm. Nothing is smoothed away: what does not fit a cooling bath is named.
#pragma once

#include "heat/box.hpp"
#include "problem/problem.hpp"
#include "units/history.hpp"
#include "units/quantity.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace holdwater::answer {

struct GaugeReading {
    units::Duration at;  // since the fill, or since the first reading
    units::Temperature bath;
    std::string note;
    std::optional<problem::Place> place;
};

/// A note without a reading that tells of an open lid or of water added.
struct GaugeTouch {
    units::Duration at;
    std::string note;
    std::optional<problem::Place> place;
};

struct GaugeQuestion {
    std::vector<GaugeReading> readings;  // in time order; two at one time are a jump
    std::vector<GaugeTouch> touches;     // notes of an open lid or added water in rows without a reading
    units::History outside;              // one point: constant
    units::Volume water;
    units::TemperatureDifference reading_error;  // of one reading, about 95 %
    units::Temperature floor;
    std::optional<std::array<units::Length, 3>> inside;
    std::optional<units::HeatCapacity> liner;       // where it is known from elsewhere
    std::optional<units::Temperature> poured;       // the water as it went in
    std::optional<units::Temperature> liner_start;  // the box before; nothing: as the air outside
    std::optional<units::Temperature> fill;         // hours are counted from this bath; nothing: from the first reading
};

/// The liner as the first fall shows it.
struct ShownLiner {
    units::HeatCapacity likely;
    units::HeatCapacity low;
    units::HeatCapacity high;
};

struct GaugedReading {
    units::Duration at;
    units::Temperature bath;
    units::Temperature fitted;
    bool used = false;  // false: outside the stretch that the fit rests on
};

/// How long a fill stays above the floor. Nothing: for ever, the air itself is as warm as the floor.
struct HoursAbove {
    units::Temperature outside;
    std::optional<units::Duration> likely;
    // On the safe side: high end of the loss, first reading too high by its error.
    std::optional<units::Duration> low;
    std::optional<units::Duration> low_breezy;
    std::optional<units::Duration> low_windy;
};

struct Gauge {
    heat::BoxLoss loss;
    units::Temperature outside;  // mean over the stretch
    std::optional<ShownLiner> liner;
    units::TemperatureDifference first_fall;        // of the bath before it cools slowly; with its error
    units::TemperatureDifference first_fall_error;  // about 95 %
    bool first_fall_known = false;                  // there were readings, or a poured temperature, to see it by
    units::HeatCapacity liner_taken;                // what the loss was reckoned with: shown, known or a planning value
    std::vector<GaugedReading> readings;
    units::Temperature start;  // from which the hours count
    units::Temperature floor;
    units::TemperatureDifference first_hour;   // fall in the first hour from `start`, outside as tested, likely
    std::array<HoursAbove, 3> hours;           // warmest air first
    std::optional<units::Duration> good_test;  // that a good test takes, where this one is weak; nothing: days
    units::TemperatureDifference pair_error;   // reading error that gives two fitted readings the same band

    std::size_t first_used() const;
    std::size_t last_used() const;
    /// The fitted bath, or that of a box with `loss_factor` times the loss.
    units::Temperature fitted_at(units::Duration at, double loss_factor = 1.0) const;
    /// That without what a changing air adds: as if the mean air had stood there all the time.
    units::Temperature in_mean_air(units::Duration at) const;

    // Of the fitted line: bath = air + above * exp(-(at - from) / time constant), plus what a changing air adds.
    units::Duration from;
    units::TemperatureDifference above;
    units::History air;
};

/// Warnings: log-jump, log-fall, lid-opened, stretch-cut, residual-large, liner-large, weak-test, test-short.
/// Errors: too-few-readings, times-not-rising, bath-not-above-outside, bath-not-falling, no-clean-stretch,
/// poured-below-bath, fill-not-above-outside, nothing-in-the-box, loss-out-of-range.
problem::Result<Gauge> gauge(const GaugeQuestion& question);

/// From made.start, in the air of the test, freezing and cold; where the test was near one of these, a mild day.
std::array<HoursAbove, 3> hours_above(const Gauge& made, units::TemperatureDifference reading_error);

/// Time until a bath that starts at `start` is down at `floor`; nothing if it never gets there.
/// t = tau ln[(start - air)/(floor - air)].
std::optional<units::Duration> time_above(units::Temperature start, units::Temperature floor, units::Temperature air,
                                          units::Duration time_constant);

}  // namespace holdwater::answer
