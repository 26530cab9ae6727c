// SPDX-License-Identifier: MIT
// The clock and the growth that decide a review, along given histories. Inside answer/ only.
#pragma once

#include "facts/facts.hpp"
#include "safety/clocks.hpp"
#include "units/history.hpp"

#include <optional>

namespace holdwater::answer {

/// The part of a history between two moments, ends included.
units::History part_of(const units::History& whole, units::Duration from, units::Duration to);

/// The histories of one food from `in` to `out`, on the clock of the log.
struct Course {
    units::History bath;       // the cautious bath: its reading less its error
    units::History seen;       // as the food sees it, colder where nobody stirs
    units::History core;       // slow
    units::History core_fast;  // fast in the same bath
    units::Duration in;
    units::Duration out;
    units::Temperature cook_floor;
    units::Temperature hold_floor;
    std::optional<units::Duration> done;  // on the clock of the log
    /// The hold floor counts from here on: the moment at which it can have been done at the soonest, so that no fall of
    /// food that was done unnoticed is measured by the lower cook floor. Nothing: from `done` on.
    std::optional<units::Duration> hold_from;
    /// A core written down as too cool starts the clock from here on.
    std::optional<units::Duration> core_counts_from;
};

struct Clocks {
    safety::Fall fall;  // without growth
    units::Duration cooking;
    units::Duration holding;
};

/// safety::measure_fall against the cook floor until done (hold_from) and the hold floor from then on, and falls add up
/// over both.
/// Strict also while the food is raw: a bath that fell below the floor starts the clock, and it stops only when bath
/// and core are at or above the floor, however long the core takes to get there for the first time.
Clocks clocks_of(const Course& course);

/// What decides about growth: the exponent A [log10] of safety::lagged_growth.
/// From the moment on at which the core has first been at the cook floor: the fastest growth at any temperature not
/// below the coolest of bath, slow core and fast core, since every layer of the piece lies above that, and a milder
/// reading may have been the true one. Before: at the surface (as above, by the bath), and while the clock runs in the
/// core, whichever is faster; growth while a raw core simply warms is no fall: what the hold leaves of it decides when
/// it is done. Lower temperatures never give less. 0 where all is above the model's highest temperature.
double growth_exponent(const Course& course, const facts::GrowthModel& model);

/// What the model gives, not a bound: the exponent along the core or along the bath as the food sees it, whichever is
/// more, from the moment on at which the core was first warm or the clock began to run.
double likely_growth_exponent(const Course& course, const facts::GrowthModel& model);

}  // namespace holdwater::answer
