// SPDX-License-Identifier: MIT
#include "answer/review/worst_history.hpp"

#include "answer/hold/piece.hpp"
#include "answer/review/review_notes.hpp"
#include "facts/facts.hpp"
#include "heat/box.hpp"
#include "heat/water.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace holdwater::support {
namespace {

using units::Duration;
using units::Temperature;

const facts::Spread& spread(const char* key) {
    return facts::facts().spread(key);
}

/// A piece at one end of its spreads, cold as it can have been, in a box that nobody stirs.
std::optional<heat::FoodInBath> food_at(const trip::Food& food, heat::Bound diffusivity, bool thick, bool poor_film) {
    const answer::Piece piece = answer::piece_of(food);
    heat::Body body = piece.body;
    const double least = spread("thickness.least").high * 1e-3;
    const double side = thick ? 1.0 : -1.0;
    body.thickness += units::Length{side * std::max(body.thickness.si() * (spread("thickness").high - 1.0), least)};
    const units::FilmCoefficient film{poor_film ? spread("film").low : spread("film").high};
    auto modes = heat::modes_of(body, answer::properties_of(piece, diffusivity), heat::with_bag(film, piece.bag));
    if (!modes) {
        return std::nullopt;
    }
    heat::FoodInBath in;
    in.modes = std::move(modes).value();
    in.capacity =
        units::HeatCapacity{piece.mass.si() * answer::properties_of(piece, heat::Bound::likely).specific_heat.si()};
    in.start = piece.start + units::kelvins(spread("start").low);
    in.colder = units::kelvins(spread("unstirred").high);
    return in;
}

/// The box as it loses heat fastest within the spreads, with the bath at a temperature.
heat::Bath coldest_box(const trip::Trip& trip, Temperature start) {
    const trip::Box& box = trip.boxes.front();
    const double wind = std::min(heat::wind_position(trip.weather.wind) + spread("wind").high, 2.0);
    heat::BoxHeat heat;
    heat.loss = std::get<units::HeatLoss>(box.test) * spread("box-loss").high * heat::wind_factor(wind);
    heat.liner = heat::liner_of(box.inside);
    heat.open_surface = units::Area{box.inside[0].si() * box.inside[1].si()};
    units::History air;
    air.add(Duration{0}, trip.weather.air_at(trip.from) + units::kelvins(spread("outside").low));
    return {heat, box.water * spread("litres").low, start, air};
}

/// Boiling water for as much of the bath as brings it to a temperature; false where it cannot.
bool pour_up_to(heat::Bath& bath, Temperature wanted, Temperature hot) {
    double none = 0.0;
    double most = bath.water().si();
    const auto poured = [&](double litres) {
        heat::Bath after = bath;
        after.pour(units::Volume{litres}, units::Volume{litres}, hot);
        return after;
    };
    if (poured(most).temperature() < wanted) {
        return false;
    }
    for (int halving = 0; halving < 30; ++halving) {
        const double half = (none + most) / 2.0;
        (poured(half).temperature() < wanted ? none : most) = half;
    }
    bath = poured(most);
    return true;
}

Temperature boiling(const trip::Trip& trip) {
    const auto boils = heat::boiling_point_at(trip.altitude);
    REQUIRE(boils.ok());
    return *boils;
}

bool bound_by_words(const trip::Log& log) {
    for (std::size_t i = 0; i < log.rows.size(); ++i) {
        const trip::LogRow& row = log.rows[i];
        const bool pair = i > 0 && row.bath && log.rows[i - 1].bath && row.at == log.rows[i - 1].at;
        if (answer::says_unpoured(row.note) || pair) {
            return true;
        }
    }
    return false;
}

constexpr Duration just_before{1.0};
constexpr double as_told = 0.02;  // K; rows are rounded to a hundredth

/// Lives through the rows; nothing where the box cannot be as cool as one of them says.
std::optional<heat::Bath> told(const trip::Trip& trip, const trip::Log& log, const heat::FoodInBath& food,
                               double bias) {
    const Temperature hot = boiling(trip) - units::kelvins(spread("boil.cooling").high);
    heat::Bath bath = coldest_box(trip, *log.rows.front().bath - units::kelvins(bias));
    bath.open_lid(units::minutes(spread("lid.open").high));
    bath.put_in(food);
    for (std::size_t i = 1; i < log.rows.size(); ++i) {
        const trip::LogRow& row = log.rows[i];
        if (!row.bath) {
            continue;  // a row that says that water was poured: so little that nothing changed
        }
        const Temperature wanted = *row.bath - units::kelvins(bias);
        bath.advance_to(std::max(bath.now(), row.at - just_before));
        if (bath.temperature() < wanted && !pour_up_to(bath, wanted, hot)) {
            return std::nullopt;
        }
        bath.advance_to(row.at);
        if (std::abs((bath.temperature() - wanted).si()) > as_told) {
            return std::nullopt;
        }
    }
    return bath;
}

}  // namespace

std::optional<ToldHistory> worst_history(const trip::Trip& trip, const safety::Standard& standard,
                                         const trip::Log& log) {
    if (bound_by_words(log)) {
        return std::nullopt;
    }
    std::optional<ToldHistory> worst;
    const double error = trip.boxes.front().thermometer->si();
    for (const heat::Bound diffusivity : {heat::Bound::slow, heat::Bound::likely, heat::Bound::fast}) {
        for (const bool thick : {true, false}) {
            for (const bool poor_film : {true, false}) {
                const auto food = food_at(trip.foods.front(), diffusivity, thick, poor_film);
                if (!food) {
                    continue;
                }
                for (const double bias : {error, 0.0, -error}) {
                    auto bath = told(trip, log, *food, bias);
                    if (!bath) {
                        continue;
                    }
                    const Truth truth = truth_of(trip, standard, *bath);
                    const bool severer =
                        !worst || truth.verdict > worst->truth.verdict ||
                        (truth.verdict == worst->truth.verdict && truth.below_h > worst->truth.below_h);
                    if (severer) {
                        worst = ToldHistory{std::move(*bath), bias, truth};
                    }
                }
            }
        }
    }
    return worst;
}

double untold(const ToldHistory& history, const trip::Log& log) {
    double most = 0.0;
    const units::History& bath = history.bath.bath_history();
    for (const trip::LogRow& row : log.rows) {
        if (row.bath) {
            // The first one was read before the food went in.
            const bool first = row.at == log.rows.front().at;
            const double shown = (first ? bath.points.front().value : bath.at(row.at)).celsius() + history.bias;
            most = std::max(most, std::abs(shown - row.bath->celsius()));
        }
    }
    return most;
}

}  // namespace holdwater::support
