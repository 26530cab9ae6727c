// SPDX-License-Identifier: MIT
// How long a piece must stay in a bath that never reads below a figure: the one answer behind every hold time that the
// program prints.
//
// What "cautious" means, everywhere: of all the ways in which piece, bath and thermometer may turn out by facts spread
// (thickness, diffusivity, film, temperature at the start, error of the thermometer, colder layer of an unstirred box),
// 95 of 100 are safe by then, all taken together. Safe is: the kill asked, and nothing left of what grew while it
// warmed.
#pragma once

#include "answer/hold/piece.hpp"
#include "heat/core_response.hpp"
#include "safety/standard.hpp"

#include <optional>
#include <vector>

namespace holdwater::answer {

/// Times since the food went in; nothing where too many of the ways never get there, or not within facts hold.horizon.
struct HoldTime {
    std::optional<units::Duration> likely;    // safe in half of the ways
    std::optional<units::Duration> cautious;  // safe in facts quantile.cautious of them
    std::optional<units::Duration> come_up;   // core from 10 to 54.4 C, cautious
    /// Cautious, and the come-up is one that the rules allow: within 6 h, or within 3 h for what is finished over the
    /// fire. Only this may be printed as a time to hold.
    std::optional<units::Duration> allowed;
};

class HoldTimes {
  public:
    /// One piece; `thermometer`: its error, zero if the bath is known. `ways`: how many ways are looked at, facts
    /// hold.points where nothing is said; fewer are for a first guess only. Errors: as heat::modes_of.
    static problem::Result<HoldTimes> of(const Piece& piece, const safety::Standard& standard,
                                         units::TemperatureDifference thermometer,
                                         std::optional<std::size_t> ways = std::nullopt);

    /// In a bath that is stirred only at the start and never reads below `reading`.
    HoldTime at(units::Temperature reading) const;

    /// How many times over the time must be added that the bath read less than `reading`, but never under `floor`, for
    /// the hold time of `reading` to be enough all the same: the smallest whole number, found by working through dips
    /// of several lengths at several moments. Nothing where the bath at `reading` is not enough by itself.
    std::optional<int> dip_factor(units::Temperature reading, units::Temperature floor) const;

  private:
    /// One way in which all may turn out, and its core as a share of the way from bath to start, on the common clock.
    struct Way {
        mutable heat::CoreResponse response;
        units::Temperature start;
        units::TemperatureDifference colder;  // the food meets the bath this much under what is read
        mutable std::vector<double> core;     // of the response, grown as far as it was asked for
    };
    struct Milestones {
        std::optional<units::Duration> safe;
        std::optional<units::Duration> come_up;
    };
    /// `soon`: looked at first until then, since most ways are safe by then [s].
    Milestones milestones(const Way& way, units::Temperature reading, double soon) const;
    void remember(const Way& way, std::size_t upto) const;
    /// The share of the way from bath to start that the core still has at a moment.
    double share_at(const Way& way, double moment) const;
    /// When this way is safe if the bath dips by `depth` from one moment to another [s]; looked at until `until`.
    std::optional<units::Duration> safe_with_dip(const Way& way, units::Temperature reading,
                                                 units::TemperatureDifference depth, double from, double to,
                                                 double until) const;

    safety::Standard standard_;
    std::vector<Way> ways_;
};

/// The thickest piece of this body, to 1 mm rounded down, whose hold time in this bath is allowed; nothing under 5 mm.
/// A block keeps its width and length. The thickness of `piece` is ignored.
std::optional<units::Length> thickest_allowed(Piece piece, const safety::Standard& standard,
                                              units::TemperatureDifference thermometer, units::Temperature reading);

}  // namespace holdwater::answer
