// SPDX-License-Identifier: MIT
#include "answer/finish/finish_time.hpp"

#include "answer/hold/one_piece.hpp"
#include "facts/facts.hpp"

#include <algorithm>

namespace holdwater::answer {
namespace {

using units::Duration;
using units::Temperature;

constexpr Duration too_long = units::hours(24);

/// A bare piece on its own, water or pan on every face in turn, as thick as it may turn out.
heat::Body bare(const Piece& piece) {
    heat::Body body = piece.body;
    body.contact = facts::Contact::free;
    body.thickness += thickness_error(body.thickness);
    return body;
}

std::optional<Duration> time_to(const Piece& piece, units::FilmCoefficient film, Temperature core, Temperature around,
                                const safety::Finish& finish) {
    const auto modes = heat::modes_of(bare(piece), properties_of(piece, heat::Bound::slow), film);
    const auto there = modes ? moment_at(*modes, core, around, finish.core) : std::nullopt;
    return there && *there < too_long ? std::optional(*there + finish.hold) : std::nullopt;
}

}  // namespace

Temperature core_out_of_bath(const Piece& piece, const safety::Standard& standard) {
    const Temperature done = piece.target - facts::facts().difference("done.below-target");
    return std::min(done, std::max(standard.cook_floor, standard.hold_floor));
}

std::optional<FinishTime> finish_time(const Piece& piece, const safety::Finish& finish, Temperature core,
                                      Temperature boiling) {
    const facts::Facts& facts = facts::facts();
    const units::TemperatureDifference below = facts.difference("finish.simmer.below");
    FinishTime time;
    time.hard_boil = finish.core > boiling - below - below;
    const Temperature water = boiling - (time.hard_boil ? facts.difference("finish.hard.below") : below);
    const auto simmering =
        time_to(piece, units::FilmCoefficient{facts.value("finish.simmer.film")}, core, water, finish);
    if (!simmering) {
        return std::nullopt;
    }
    time.simmering = *simmering;
    const units::Length flat = units::millimetres(facts.value("finish.pan.thickest"));
    if (!time.hard_boil && piece.body.shape == facts::Shape::slab && piece.body.thickness <= flat) {
        // Each face lies on the pan for half of the time.
        time.pan = time_to(piece, units::FilmCoefficient{facts.value("finish.pan.film") / 2.0}, core,
                           std::min(facts.temperature("finish.pan.face"), boiling), finish);
    }
    return time;
}

}  // namespace holdwater::answer
