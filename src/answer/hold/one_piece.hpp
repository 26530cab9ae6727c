// SPDX-License-Identifier: MIT
// One reading of one piece in a constant bath: when its core arrives, when its germs are dead, how warm it is by then.
#pragma once

#include "heat/body.hpp"
#include "problem/problem.hpp"
#include "safety/standard.hpp"

#include <optional>
#include <variant>

namespace holdwater::answer {

struct PieceQuestion {
    heat::Body body;
    units::Temperature bath;
    units::Temperature start;
    units::Temperature target;
    std::optional<units::Duration> at;  // also tell the temperatures at this time
};

/// Kill figures of one germ, as an expert gives them. Physics only: every temperature counts, there is no floor.
struct KillFigures {
    units::Duration d;  // for one log10, at `at`
    units::Temperature at;
    units::TemperatureDifference z;
    double log10 = 0.0;  // asked for
};

/// What kill is judged by: nothing, the published rows of a standard, or given figures.
using KillRule = std::variant<std::monostate, safety::Standard, KillFigures>;

/// Times since the food went in; nothing = never, or for kill not within 72 h or not credited.
struct PieceTimes {
    std::optional<units::Duration> reach;    // core at the target; 0 if it is there from the start
    std::optional<units::Duration> come_up;  // core through facts come-up.*, counted from the start if that is later
    std::optional<units::Duration> kill;     // with the adaptation factor, if judged by a standard
    std::optional<units::Duration> kill_7;   // by the 7-log rows, where `kill` is by the 6.5-log rows of red meat
    std::optional<units::Duration> safe;     // kill, and any core temperature that the standard asks
    std::optional<units::Temperature> core;  // these three at the time asked
    std::optional<units::Temperature> surface;
    std::optional<units::Temperature> mean;
};

/// `film`: bag included. Reach and come-up are solved on the series itself, to 1e-9 of their value.
problem::Result<PieceTimes> times_of(const PieceQuestion& question, const heat::FoodProperties& properties,
                                     units::FilmCoefficient film, const KillRule& rule);

/// First moment at which the core is at `level`, coming from the start: 0 if it is there already, nothing if never.
std::optional<units::Duration> moment_at(const heat::Modes& modes, units::Temperature start, units::Temperature bath,
                                         units::Temperature level);

/// First moment at which the given kill is met, within 72 h.
std::optional<units::Duration> moment_killed(const heat::Modes& modes, units::Temperature start,
                                             units::Temperature bath, const KillFigures& figures);

}  // namespace holdwater::answer
