// SPDX-License-Identifier: MIT
// What the bath may have done between the readings of a log. Inside answer/ only.
#pragma once

#include "answer/review/lowest_bath.hpp"
#include "heat/box.hpp"
#include "problem/problem.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"
#include "units/print.hpp"

#include <string>
#include <vector>

namespace holdwater::answer {

/// How a closed box cools: likely, at its slow end with all its food in it, and at its worst.
struct BoxCooling {
    double likely = 0.0;  // 1/s
    double slow = 0.0;
    WorstBox worst;
    units::History air_likely;  // on the clock of the log
    units::History air_high;

    /// The likely bath [C] so long after `from`, lid closed; it never warms.
    double after(double bath, double from, double to) const;
};

/// Loss from the box test or as given, wind class and its spread, litres and theirs; air as logged, else as forecast,
/// and at the ends colder and warmer by the spread of forecasts. Errors: those of the box test, with the place of the
/// box.
problem::Result<BoxCooling> cooling_of(const trip::Trip& trip, const trip::Box& box, const trip::Log& log);

/// Between two readings nobody said whether water was poured, and the box alone may have come to the second one.
struct OpenStretch {
    units::Duration from;
    units::Duration to;
    std::size_t row = 0;        // of the second reading
    units::Temperature lowest;  // of the cautious path in it
};

struct BathPaths {
    units::History likely;
    units::History cautious;
    std::vector<std::size_t> doubtful;  // indices of rows of the log
    std::vector<OpenStretch> open;
    problem::Problems remarks;  // with places, in the order of the log
};

/// Whether rows say that nothing was poured: as they are written, or taken to say so wherever no row and no reading
/// speaks against it (to tell what such words would change).
enum class Unpoured { as_written, wherever_possible };

/// The two paths through the readings, from `from` to `to`. `error` of one reading.
///
/// Nothing is smoothed away: every reading is used as read, less its error in the cautious path, where that is not
/// below what the box allows while the thermometer can explain it (LowestBath). Between two readings
/// - likely: a straight line; where the second is higher, the fall goes on along the likely loss up to the row that
///   says "top-up", else up to just before the second reading, and jumps there;
/// - cautious: the lowest bath that this box with this food allows after the first reading (LowestBath), up to just
///   before the second, whatever that says. A pour, noted or not, is a jump: a second reading that looks as if the box
///   had been left alone may be that of a box that fell further and was warmed again. What is not written never makes
///   the path milder: no note shortens a fall, and leaving out any reading of a box that only cooled and was poured
///   into never raises the path;
/// - only where the log says that nothing was poured (says_unpoured: the Log card's box "before", "nothing poured", or
///   the first of two readings at one moment, the second with a note of a pour)
///   physics forbids more: a bath without heat was never colder than the second reading, less its error. The words
///   reach back to the last row that says that water was poured, over readings between; they are not believed across a
///   reading that is warmer than the box left alone can be.
/// A fall faster than the box can lose heat (lid open, leak, cold water) may have come at once after the first reading.
BathPaths paths_of(const trip::Log& log, const BoxCooling& box, const std::vector<WorstFood>& foods,
                   units::TemperatureDifference error, units::Temperature floor, units::Duration from,
                   units::Duration to, units::System system = units::System::metric,
                   Unpoured unpoured = Unpoured::as_written);

}  // namespace holdwater::answer
