// SPDX-License-Identifier: MIT
#include "answer/hold/piece.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <tuple>

namespace holdwater::answer {
namespace {

units::ThermalResistance resistance_of(const std::variant<facts::Bag, units::ThermalResistance>& bag) {
    if (const auto* given = std::get_if<units::ThermalResistance>(&bag)) {
        return *given;
    }
    const bool thick = std::get<facts::Bag>(bag) == facts::Bag::thick;
    return units::ThermalResistance{facts::facts().value(thick ? "bag.thick" : "bag.thin")};
}

}  // namespace

Piece piece_of(const trip::Food& food) {
    Piece piece;
    piece.body.shape = food.shape;
    piece.body.thickness = food.thickness;
    piece.body.width = food.width;
    piece.body.length = food.length;
    piece.body.contact = food.contact;
    if (food.composition) {
        const trip::GivenComposition& c = *food.composition;
        piece.composition = {c.water, c.protein, c.fat, c.carbohydrate, c.fibre, c.ash};
    } else if (const facts::FoodKind* kind = facts::facts().find_food(food.kind)) {
        piece.composition = kind->composition;
    }
    piece.given = food.properties;
    piece.bag = resistance_of(food.bag);
    piece.start = food.start;
    piece.target = food.target;
    piece.mass = food.mass * food.pieces;
    piece.pieces = food.pieces;
    return piece;
}

bool same_piece(const Piece& a, const Piece& b) {
    const auto shape = [](const heat::Body& body) {
        return std::tie(body.shape, body.thickness, body.width, body.length, body.contact, body.curvature);
    };
    const auto made_of = [](const facts::Composition& c) {
        return std::tie(c.water, c.protein, c.fat, c.carbohydrate, c.fibre, c.ash);
    };
    const auto rest = [](const Piece& p) {
        return std::tie(p.given.diffusivity, p.given.conductivity, p.bag, p.start, p.target, p.mass, p.pieces);
    };
    return shape(a.body) == shape(b.body) && made_of(a.composition) == made_of(b.composition) && rest(a) == rest(b);
}

heat::FoodProperties properties_of(const Piece& piece, heat::Bound reading) {
    const units::Temperature mean = piece.start + (piece.target - piece.start) / 2.0;
    heat::FoodProperties properties = heat::reading_of(piece.composition, mean, reading);
    if (piece.given.diffusivity) {
        properties = heat::with_diffusivity(properties, *piece.given.diffusivity);
    }
    if (piece.given.conductivity) {
        properties.conductivity = *piece.given.conductivity;
    }
    return properties;
}

units::FilmCoefficient film_of(const Piece& piece, heat::Bound reading) {
    const facts::Spread& spread = facts::facts().spread("film");
    const double film = reading == heat::Bound::slow   ? spread.low
                        : reading == heat::Bound::fast ? spread.high
                                                       : facts::facts().value("film.likely");
    return heat::with_bag(units::FilmCoefficient{film}, piece.bag);
}

units::Length thickness_error(units::Length thickness) {
    const facts::Spread& share = facts::facts().spread("thickness");
    const units::Length least = units::millimetres(facts::facts().spread("thickness.least").high);
    return std::max(thickness * ((share.high - share.low) / 2.0), least);
}

problem::Result<VariedPiece> varied(const Piece& piece, const PieceErrors& errors) {
    // Between the ends on the logarithm, as log-normal spreads are drawn: place 0 is the median.
    const auto between = [](double low, double high, double place) {
        return std::exp(0.5 * (std::log(low) + std::log(high)) + 0.5 * place * (std::log(high) - std::log(low)));
    };
    const heat::FoodProperties slow = properties_of(piece, heat::Bound::slow);
    const heat::FoodProperties fast = properties_of(piece, heat::Bound::fast);
    const units::Diffusivity diffusivity{between(slow.diffusivity.si(), fast.diffusivity.si(), errors.diffusivity)};
    const facts::Spread& films = facts::facts().spread("film");
    const units::FilmCoefficient film =
        heat::with_bag(units::FilmCoefficient{between(films.low, films.high, errors.film)}, piece.bag);
    heat::Body body = piece.body;
    body.thickness += thickness_error(body.thickness) * errors.thickness;
    auto modes =
        heat::modes_of(body, heat::with_diffusivity(properties_of(piece, heat::Bound::likely), diffusivity), film);
    if (!modes) {
        return modes.problems();
    }
    return VariedPiece{std::move(modes).value(), piece.start + errors.start};
}

heat::Lying lying(const Piece& piece) {
    const heat::Body& body = piece.body;
    const units::Density density = properties_of(piece, heat::Bound::likely).density;
    heat::Lying lying;
    lying.volume = units::Volume{piece.mass.si() / density.si()};
    lying.height = body.thickness;
    // A round and a ball need the rectangle around them, everything else what its volume gives.
    const double one = body.shape == facts::Shape::ball ? body.thickness.si() * body.thickness.si()
                       : body.shape == facts::Shape::round
                           ? body.thickness.si() * body.length.value_or(body.thickness).si()
                           : lying.volume.si() / piece.pieces / body.thickness.si();
    const bool stacked = body.contact == facts::Contact::stacked && piece.pieces > 1;
    lying.footprint = units::Area{one * (stacked ? (piece.pieces + 1) / 2 : piece.pieces)};
    if (stacked) {
        lying.height += body.thickness;
    }
    lying.apart = body.contact == facts::Contact::free;
    return lying;
}

safety::Request request_of(const facts::FoodKind& kind, const trip::Food& food, const trip::Trip& trip,
                           const trip::Box& box) {
    safety::Request request = safety::request_for(kind);
    request.cut = food.cut;
    request.ruleset = trip.rules;
    request.use = food.use;
    request.thickness = food.thickness;
    request.flat = food.shape == facts::Shape::slab;
    request.start = food.start;
    request.target = food.target;
    request.at_risk = trip.at_risk;
    request.has_thermometer = box.thermometer.has_value();
    request.has_wax_tell_tale = box.wax_tell_tale;
    request.over_fire = food.over_fire;
    return request;
}

problem::Result<safety::Standard> standard_of(const trip::Food& food, const trip::Trip& trip, const trip::Box& box) {
    const facts::FoodKind* kind = facts::facts().find_food(food.kind);
    if (kind == nullptr) {
        problem::Problem unknown = problem::error("kind-unknown", fmt::format("\"{}\" is not a known food", food.kind),
                                                  "see `holdwater sources --foods`");
        unknown.place = food.place;
        return unknown;
    }
    auto standard = safety::standard_for(request_of(*kind, food, trip, box));
    if (standard) {
        return standard;
    }
    problem::Problems placed = standard.problems();
    for (problem::Problem& p : placed) {
        p.message = fmt::format("{}: {}", food.name, p.message);
        p.place = food.place;
    }
    return placed;
}

}  // namespace holdwater::answer
