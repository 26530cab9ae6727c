// SPDX-License-Identifier: MIT
// When the food of a written log was ready, in the one meaning of cautious that plan, Hold card and `hold` have too
// (answer/hold/hold_time): in 95 of 100 ways in which piece, thermometer and unstirred box may turn out, all taken
// together. Inside answer/ only.
#pragma once

#include "answer/hold/piece.hpp"
#include "answer/review/review.hpp"
#include "answer/review/review_notes.hpp"

#include <optional>
#include <vector>

namespace holdwater::answer {

/// The bath as the food sees it, colder by the layer that an unstirred box hides. The layer grows in a straight line
/// to `layer` from the moment at which the food goes in; no later stirring is counted on, so that a top-up that is
/// written down makes nothing better.
units::History seen_by_food(const units::History& bath, units::Duration in, units::TemperatureDifference layer);

/// Never above what a thermometer in the core showed: where a reading, less its error, lies below the computed core,
/// that difference counts on from there, and grows to it in a straight line from the reading before.
units::History not_above(units::History core, const std::vector<CoreReading>& readings,
                         units::TemperatureDifference error);

/// What is known of a food in a written bath.
struct Written {
    const Piece& piece;
    const safety::Standard& standard;
    Stay stay;
    const units::History& bath;  // during the stay: the lowest, the whole error of its thermometer off
    units::Duration read_from;   // the first reading
    const std::vector<CoreReading>& core_readings;
    units::TemperatureDifference error;  // of the thermometers
};

/// One of the ways: by then all but one in twenty are ready.
struct DecidingWay {
    std::optional<units::Duration> safe;   // on the clock of the log; nothing: not within the stay
    std::optional<units::Duration> ready;  // safe, and nothing left of what grew
    units::History core;
};

/// Errors: as heat::modes_of.
problem::Result<DecidingWay> deciding_way(const Written& written);

}  // namespace holdwater::answer
