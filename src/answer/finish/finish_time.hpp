// SPDX-License-Identifier: MIT
// Finishing over the fire: how long a piece out of the bath takes until its core has its full temperature.
#pragma once

#include "answer/hold/piece.hpp"
#include "safety/standard.hpp"

#include <algorithm>
#include <optional>

namespace holdwater::answer {

/// Times of one piece, cautious: somewhat thicker than measured, slow meat, a low film. A thermometer in the centre
/// decides; these say when to begin.
struct FinishTime {
    units::Duration simmering;  // out of its bag, in water at a gentle boil
    bool hard_boil = false;     // at a hard one instead: a gentle one is hardly hotter than the core must get
    /// In a pan, turned often. Nothing: not flat, thicker than facts finish.pan.thickest, or a hard boil is needed.
    std::optional<units::Duration> pan;

    units::Duration longest() const { return std::max(simmering, pan.value_or(simmering)); }
};

/// How cold the core of a piece may be when it leaves the bath: done, then kept as cool as its floors allow.
units::Temperature core_out_of_bath(const Piece& piece, const safety::Standard& standard);

/// From `core` all through the piece to the finish's core, its time there included. Nothing where it never gets there:
/// water that boils at `boiling` is too cool for it, or it would take longer than a day.
std::optional<FinishTime> finish_time(const Piece& piece, const safety::Finish& finish, units::Temperature core,
                                      units::Temperature boiling);

}  // namespace holdwater::answer
