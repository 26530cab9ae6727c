// SPDX-License-Identifier: MIT
// How thick leftovers may be so that they cool in time: 21 C within 2 h and 5 C within 6 h since they left the bath,
// and no more than 4 h between the two.
#pragma once

#include "answer/hold/hold.hpp"

#include <optional>
#include <vector>

namespace holdwater::answer {

enum class Medium { slush, still_air, loose_snow };

/// What takes the heat away: its temperature and its film on the bag or the food, whatever lies between included.
struct Cold {
    units::Temperature temperature;
    units::FilmCoefficient film;
};
/// Stirred ice slush, food in a thin bag; the film of a reading as for a bath (facts film.*).
Cold slush(heat::Bound reading = heat::Bound::slow);
/// Still air as read, which counts as a little warmer, and loose snow, which is read as still air at the temperature of
/// melting; the low end of the film. `air` is the warmest that is expected in those 6 h.
Cold still_air(units::Temperature air);
Cold loose_snow();

/// How one slice cools. The clocks run from the moment at which the piece left the bath, although the core may stay
/// above 57 C for a while: the faces do not. At table (facts leftovers.begin) nothing of its heat is taken off.
struct SliceCooling {
    std::optional<units::Duration> to_middle;  // core at 21 C, since it went into the cold; nothing: never within 72 h
    std::optional<units::Duration> to_end;     // core at 5 C, since it went into the cold
    bool in_time = false;                      // the time at table counted
};

/// A wide flat slice, cooled through both faces (free), or with its lower face on the floor of a tray (floor) through
/// one. A start below 57 C counts as 57 C: what came before is not known. Errors: as heat::modes_of.
problem::Result<SliceCooling> cool_slice(units::Length thickness, facts::Contact contact,
                                         const facts::Composition& composition, units::Temperature start,
                                         const Cold& cold, heat::Bound reading = heat::Bound::slow);

/// The thickest such slice that cools in time, to 1 mm (rounded down), never over facts leftovers.thickest; nothing if
/// even 1 mm does not, as in air of 4 C or more.
struct ThickestSlice {
    Medium medium = Medium::slush;
    facts::Contact contact = facts::Contact::free;
    std::optional<units::Length> thickest;
    std::optional<units::Duration> to_middle;  // of that slice
    std::optional<units::Duration> to_end;
};
ThickestSlice thickest_slice(Medium medium, const Cold& cold, facts::Contact contact,
                             const facts::Composition& composition, units::Temperature start,
                             heat::Bound reading = heat::Bound::slow);

/// Every medium, each with both faces cooled and with one, in the order of the two enumerations; cautious readings.
std::vector<ThickestSlice> thickest_slices(const facts::Composition& composition, units::Temperature start,
                                           units::Temperature air);

}  // namespace holdwater::answer
