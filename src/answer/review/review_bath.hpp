// SPDX-License-Identifier: MIT
// What the bath may have done between the readings of a log. Inside answer/ only.
#pragma once

#include "heat/box.hpp"
#include "problem/problem.hpp"
#include "trip/read_log.hpp"
#include "trip/trip.hpp"
#include "units/history.hpp"
#include "units/print.hpp"

#include <string>
#include <vector>

namespace holdwater::answer {

/// How a closed box cools, likely and at the fast end, and the air that it cools towards. The fast end has no food in
/// it: food holds heat once it is warm. What cold food takes is asked for with the path.
struct BoxCooling {
    double likely = 0.0;  // 1/s
    double fast = 0.0;
    double slow = 0.0;
    units::History air_likely;  // on the clock of the log
    units::History air_low;

    /// The bath [C] so long after `from`, lid closed; it never warms.
    double after(double bath, double from, double to, bool at_fast_end) const;
};

/// Loss from the box test or as given, wind class and its spread; air as logged, else as forecast, and at the low end
/// colder by the spread of forecasts. Errors: those of the box test, with the place of the box.
problem::Result<BoxCooling> cooling_of(const trip::Trip& trip, const trip::Box& box, const trip::Log& log);

struct BathPaths {
    units::History likely;
    units::History cautious;
    std::vector<std::size_t> doubtful;  // indices of rows of the log
    problem::Problems remarks;          // with places, in the order of the log
};

/// The two paths through the readings, from `from` to `to`. `error` of one reading. `uptake`: how far [K] cold food
/// pulls the bath down until a moment, rising from 0.
///
/// Nothing is smoothed away: every reading is used as read, less its error in the cautious path. Between two readings
/// - likely: a straight line; where the second is higher, the fall goes on along the likely loss up to the row that
///   says "top-up", else up to just before the second reading, and jumps there;
/// - cautious: never above the straight line. Where the second reading is higher, or not as low as a box left alone
///   would be, or where a gap lies between, the bath falls along the fast end of the loss until just before the second
///   reading. No note shortens this: a top-up may be written down at the wrong time. A fall faster than the box can
///   lose heat (lid open, leak, cold water) may have come at once after the first reading.
BathPaths paths_of(const trip::Log& log, const BoxCooling& box, units::TemperatureDifference error,
                   const units::History& uptake, units::Temperature floor, units::Duration from, units::Duration to,
                   units::System system = units::System::metric);

}  // namespace holdwater::answer
