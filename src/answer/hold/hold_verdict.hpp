// SPDX-License-Identifier: MIT
// One piece in a constant bath, all readings, and whether it may be eaten: the answer of `hold`.
#pragma once

#include "answer/hold/hold_time.hpp"
#include "answer/hold/one_piece.hpp"
#include "facts/facts.hpp"

#include <optional>
#include <variant>

namespace holdwater::answer {

/// Everything that `hold` is asked.
struct OnePieceQuestion {
    heat::Body body;
    units::Temperature bath;
    units::Temperature start;
    std::optional<units::Temperature> target;  // absent: facts hold.short-of-bath short of the bath
    std::optional<units::Duration> at;
    std::variant<facts::Bag, units::ThermalResistance> bag = facts::Bag::thin;
    bool bag_given = false;

    const facts::FoodKind* kind = nullptr;  // absent: all three properties below must be there
    facts::Cut cut = facts::Cut::intact;
    facts::Ruleset rules{};
    bool at_risk = false;

    std::optional<units::Diffusivity> diffusivity;
    std::optional<units::Conductivity> conductivity;
    std::optional<units::FilmCoefficient> film;  // taken as the whole way to the water, unless a bag is given too
    std::optional<KillFigures> kill;

    bool has_given() const { return diffusivity || conductivity || film || kill; }
};

/// One column of the answer, and what it was worked out with. The cautious one has, besides slow properties and film,
/// a piece thicker and colder than stated, by the spread of both.
struct ReadingOfPiece {
    PieceTimes times;
    units::Diffusivity diffusivity;
    units::Conductivity conductivity;
    units::FilmCoefficient film;  // bag included
};

/// Why it may be eaten, or why the answer is physics only.
enum class Why {
    safe,            // published rows met
    own_figures,     // the kill figures given are met; the rules do not say so
    no_kind,         // nothing is known about what it is
    kind_refused,    // never from a bath
    target_refused,  // the aim is too cool
    bath_too_cool,   // the bath is below what is credited or allowed
    cools,           // the bath is colder than the food
    start_warm,      // raw food warmer than any trip may have it: nobody knows for how long
    start_frozen,    // colder than any trip may have it: thawing is not worked out
    too_slow,        // the core takes too long to come up
    never_safe,      // not within 72 h
    needs_finish     // only after a finish over the fire
};

/// The lowest target and bath that the rules allow, for this very piece.
struct NearestPlan {
    units::Temperature target;
    units::Temperature bath;
    std::optional<units::Duration> safe;    // cautious; nothing: this piece is too thick for it
    std::optional<units::Length> thickest;  // set if it is too thick
    std::optional<safety::Finish> finish;
};

struct OnePieceAnswer {
    units::Temperature target;
    std::optional<ReadingOfPiece> likely;
    std::optional<ReadingOfPiece> cautious;
    std::optional<ReadingOfPiece> given;

    Why why = Why::no_kind;
    bool eat() const { return why == Why::safe || why == Why::own_figures; }
    std::optional<units::Duration> safe;  // cautious: figures given are taken, the rest is slow, thick and cold
    std::optional<units::Duration> come_up;
    /// The same in a real box: a bath that never reads below `bath` on a thermometer as good as facts class.thermometer
    /// says, stirred at the start only. Nothing without a kind, or where the rules refuse.
    std::optional<HoldTime> as_read;
    std::optional<problem::Problem> refusal;
    std::optional<safety::Standard> standard;  // of this kind; for a refused aim that of the lowest aim allowed
    std::optional<NearestPlan> nearest;
    std::optional<units::Length> thickest;  // with too_slow, in this bath; nothing: none
    /// Of this kind, in this bath, whose core still comes up in time, water on every face: a slab, a long round.
    /// Nothing: none does, or there is no kind.
    std::optional<units::Length> thickest_slab;
    std::optional<units::Length> thickest_round;
    std::optional<units::Duration> safe_if_free;  // too thick as it lies: cautious, with water on every face instead
};

/// Errors: those of the body (size-out-of-range, dimension-missing). A question without a kind needs diffusivity,
/// conductivity and film (properties-missing).
problem::Result<OnePieceAnswer> answer_one_piece(const OnePieceQuestion& question);

}  // namespace holdwater::answer
