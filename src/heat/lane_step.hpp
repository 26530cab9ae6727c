// SPDX-License-Identifier: MIT
// One step of up to eight baths at once. Inside heat/ only.
#pragma once

#include "heat/lane_modes.hpp"

#include <cstddef>
#include <vector>

namespace holdwater::heat {

/// Decay, gain and lag of a step that has no ready-made factors; each lane has its own length.
struct OtherStep {
    std::vector<LaneRow> decay;
    std::vector<LaneRow> gain;
    LaneRow lag;
};

/// One food that lies in each of the baths.
struct PieceInLanes {
    const LaneModes* modes = nullptr;
    std::vector<LaneRow> excess;  // K, of each mode, a row a mode
    OtherStep other;
    LaneRow capacity;  // J/K
    LaneRow colder;    // K, how much colder it sees the bath once that has settled
    LaneRow seen;      // C, the bath as it sees it
    LaneRow core;      // C
    LaneRow given;     // J, that passed into it, summed up
    LaneRow fall;      // K, of the mean excess in a step of BathsInLanes::fall_for if the bath keeps its temperature
};

/// Baths side by side.
struct BathsInLanes {
    std::vector<PieceInLanes> pieces;
    LaneRow now;                          // s
    LaneRow stirred;                      // s, when last
    LaneRow capacity;                     // J/K, water and liner
    LaneRow loss;                         // W/K, lid closed
    LaneRow bath;                         // C
    LaneRow lost;                         // J to the outside, summed up
    std::size_t fall_for = step_lengths;  // ready-made length whose falls are known; step_lengths: none
    double ramp{};                        // s until the colder layer is whole
};

/// Moves bath and foods of the lanes whose `dt` [s] is more than 0; all of them by steps of the ready-made length
/// `rung`, or with `step_lengths` each by its own. `outside`: mean air [C] over each one's step. The same numbers bit
/// by bit whatever the processor can do at once.
void step_lanes(BathsInLanes& baths, const LaneRow& dt, const LaneRow& outside, std::size_t rung);

}  // namespace holdwater::heat
