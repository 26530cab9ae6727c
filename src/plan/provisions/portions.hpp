// SPDX-License-Identifier: MIT
// Whether the food is enough for the eaters.
#pragma once

#include "plan/result/between.hpp"
#include "trip/trip.hpp"
#include "units/quantity.hpp"

namespace holdwater::plan {

struct Portions {
    units::Mass raw;              // all foods, as they go into the bags
    units::Mass boneless;         // the same without bone, likely
    Between<units::Mass> cooked;  // without bone
    Between<units::Mass> each;    // cooked, for one eater
    int serves_ordinary = 0;      // eaters at an ordinary portion, by the likely cooked mass
    int serves_hearty = 0;        // the same at a portion after a day's work
    enum class Verdict {
        hearty,  // enough for hearty eaters even if it cooks down much
        enough,  // an ordinary portion for each even then
        scarce,  // an ordinary portion only by the likely yield
        too_little
    };
    Verdict verdict = Verdict::too_little;
    units::Mass missing;  // raw, without bone: what would bring a scarce or too small amount to enough
};

/// Yield by facts portion.*: bone comes off first, then what cooks out.
Portions portions_of(const trip::Trip& trip, units::LocalTime serve);

}  // namespace holdwater::plan
