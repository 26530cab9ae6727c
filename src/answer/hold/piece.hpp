// SPDX-License-Identifier: MIT
// A food of a trip as heat and safety see it: body, composition, bag, and the standard that it must reach.
#pragma once

#include "facts/facts.hpp"
#include "heat/body.hpp"
#include "heat/food_properties.hpp"
#include "heat/level.hpp"
#include "problem/problem.hpp"
#include "safety/standard.hpp"
#include "trip/trip.hpp"

namespace holdwater::answer {

struct Piece {
    heat::Body body;
    facts::Composition composition;
    trip::GivenProperties given;
    units::ThermalResistance bag;
    units::Temperature start;
    units::Temperature target;
    units::Mass mass;  // of all pieces
    int pieces = 1;
};

/// Body, composition and bag of a food; its kind must be known (the reader has checked it).
Piece piece_of(const trip::Food& food);

/// True if they are alike in everything, so that what one turns out to be the other is as well.
bool same_piece(const Piece& a, const Piece& b);

/// Properties at the mean of start and target, read slow, likely or fast; measured values given in the trip file win.
heat::FoodProperties properties_of(const Piece& piece, heat::Bound reading);

/// Film and bag for a reading: slow takes the low published film, fast the high one.
units::FilmCoefficient film_of(const Piece& piece, heat::Bound reading);

/// Where one piece lies within what nobody knows of it exactly; each a place from -1 (low end of facts spread) over 0
/// (its median) to 1 (high end), which a normal spread may pass. `start` is a difference.
struct PieceErrors {
    double thickness = 0.0;
    double diffusivity = 0.0;
    double film = 0.0;
    units::TemperatureDifference start{0};
};

/// A piece as it turned out.
struct VariedPiece {
    heat::Modes modes;
    units::Temperature start;
};

/// Half the band in which a thickness lies that was measured as this: facts spread thickness and thickness.least.
units::Length thickness_error(units::Length thickness);

/// The piece with these errors: the very values that facts spread draws. Errors: as heat::modes_of.
problem::Result<VariedPiece> varied(const Piece& piece, const PieceErrors& errors);

/// All pieces of the food lying flat on the bottom of the box; where stacked, in twos.
heat::Lying lying(const Piece& piece);

/// What decides about a food of this trip, whose kind this is.
safety::Request request_of(const facts::FoodKind& kind, const trip::Food& food, const trip::Trip& trip,
                           const trip::Box& box);

/// The standard for a food of this trip, or why it is refused. Every problem points at the food in the trip file.
problem::Result<safety::Standard> standard_of(const trip::Food& food, const trip::Trip& trip, const trip::Box& box);

}  // namespace holdwater::answer
