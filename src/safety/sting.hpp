// SPDX-License-Identifier: MIT
// What a dip of a fingertip can and cannot tell: when hot water stings, for hands that differ, and what bath a sting
// speaks for. A hand is never a thermometer; these bands say why.
#pragma once

#include "safety/skin.hpp"
#include "units/quantity.hpp"

#include <optional>

namespace holdwater::safety {

enum class HandState { warm, cold };
enum class Stirring { stirred, still };

/// One hand: it stings when the skin at `depth` first reaches `threshold`.
struct HandModel {
    units::Temperature start;
    units::Length depth;
    units::Temperature threshold;
};

/// Time from touch to sting, without reaction; nothing if never. `response` is that of the hand's skin and film.
/// Source: pain at a depth (stoll-greene-1959) in the layers of jiang-2002. Not checked by any published sting times
/// above 48 C.
std::optional<units::Duration> first_sting(const SkinResponse& response, const HandModel& hand,
                                           units::Temperature water);

/// 5, 50 and 95 of 100 hands are stung, and have said so, after these times; nothing: not within two minutes.
struct StingBand {
    std::optional<units::Duration> p5;
    std::optional<units::Duration> p50;
    std::optional<units::Duration> p95;
    double never = 0.0;  // share of hands that are not stung at all
};
StingBand sting_band(units::Temperature water, HandState hand, Stirring stirring);

struct BathBand {
    units::Temperature p5;
    units::Temperature p50;
    units::Temperature p95;
};

/// Every bath between these is thought equally likely before the dip.
struct Prior {
    units::Temperature low;
    units::Temperature high;
};
Prior usual_prior();

/// Baths that a sting within [from, to) speaks for; nothing if no hand of the population is stung then. Without `to`:
/// not stung until `from`, whether later or never.
std::optional<BathBand> bath_band(units::Duration from, std::optional<units::Duration> to, HandState hand,
                                  Stirring stirring, Prior prior);

/// The four rows of a dip.
enum class DipRow { at_once, by_one, by_two, not_by_two };
std::optional<BathBand> bath_band(DipRow row, HandState hand, Stirring stirring);
/// The same of a warm hand in stirred water, looked up: worked out once, facts touch.band.*.
BathBand dip_band(DipRow row);

/// Baths that one stated sting time speaks for, with the error that such a time has.
std::optional<BathBand> bath_band(units::Duration sting, HandState hand, Stirring stirring);

}  // namespace holdwater::safety
